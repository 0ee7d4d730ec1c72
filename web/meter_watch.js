/** Asks what the meter's screen needs, once for each state of the job: what to expect, what it means. */

import { NoAnswer, Overtaken, Refused } from "./door.js";
import { meteredZone, readingsOf } from "./meter_first.js";

/** @typedef {import("./state").State} State */
/** @typedef {import("./meter_state").MeterState} MeterState */

/** @param {import("./shapes").House} house */
export const makeMeterWatch = ({ store, door }) => {
  let asked = "";

  /** @param {Partial<MeterState>} part */
  const set = (part) => store.change({ meter: { ...store.read().meter, ...part } });

  /** @param {State} state */
  const expect = ({ desk, place }) =>
    door.ask("expected", { job: desk?.job, where: { zone: place.zone } }, "expected");

  /**
   * A long search is answered in parts; each is shown, and asked on from where it stopped.
   * @param {State} state @param {string} key @param {string} of
   */
  const diagnose = async (state, key, of) => {
    const { desk, meter } = state;
    const complaint = meter.complaint || null;
    const body = { job: desk?.job, where: { zone: of }, readings: readingsOf(state).now, complaint };
    /** @type {import("./meter_state").Diagnosis["resume"]} */
    let resume = null;
    do {
      /** @type {import("./meter_state").Diagnosis} */
      const answer = await door.ask("diagnose", { ...body, resume }, "diagnose");
      if (asked !== key) return;
      set({ diagnosis: { of, answer } });
      ({ resume } = answer);
    } while (resume);
  };

  /** @param {State} state @param {string} key @param {string} of */
  const askAll = async (state, key, of) => {
    if (!state.meter.complaints) {
      set({ complaints: (await door.ask("complaint", {}, "complaint")).complaints });
    }
    const answer = await expect(state);
    if (asked !== key) return;
    set({ expected: { of, answer } });
    const anything = readingsOf(state).now.length > 0 || state.meter.complaint;
    if (anything) await diagnose(state, key, of);
    else set({ diagnosis: null });
  };

  /** @param {State} state */
  return async (state) => {
    const zone = meteredZone(state);
    const landed = zone?.output ?? zone?.page_output;
    if (!zone || !landed || state.engine.stage !== "ready") return;
    const { desk, engine, manner, meter } = state;
    const key = JSON.stringify([desk?.id, desk?.job.rev, engine.version, manner, zone.id, meter.complaint]);
    if (asked === key) return;
    asked = key;
    try {
      await askAll(state, key, zone.id);
    } catch (error) {
      if (error instanceof Overtaken) asked = asked === key ? "" : asked;
      else if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
    }
  };
};
