/** Asks what the meter's screens need, once for each state of the line: what to expect, what it means. */

import { NoAnswer, Overtaken, Refused } from "./door.js";
import { complaintOf, costsOf, isLoose, lineOf, meteredZone, readingsOf } from "./meter_first.js";
import { EFFORTS, INSTRUMENT, LOOSE } from "./meter_keep.js";
import { say } from "./say.js";
import { runOf } from "./test_run.js";

/** @typedef {import("./state").State} State */
/** @typedef {import("./meter_state").MeterState} MeterState */
/** @typedef {{[name: string]: unknown}} Line what names the line in an ask */

/** @type {readonly string[]} */
const PAPERS = ["paper", "schedule"];
const ABOUT = /** @type {const} */ (["count", "tap_w", "line_v", "amplifier_w"]);

/** The line as an ask takes it: a zone of the job, or a bare count. @param {State} state @returns {Line} */
const askedLine = (state) => {
  if (!isLoose(state)) return { job: state.desk?.job, where: { zone: state.place.zone } };
  const { about } = state.meter;
  return { about: Object.fromEntries(ABOUT.map((name) => [name, about[name]])) };
};

/** @param {import("./shapes").House} house */
export const makeMeterWatch = ({ store, door, keeper }) => {
  let asked = "";
  let opened = "";

  /** @param {Partial<MeterState>} part */
  const set = (part) => store.change({ meter: { ...store.read().meter, ...part } });

  /**
   * A long search is answered in parts; each is shown, and asked on from where it stopped.
   * @param {State} state @param {string} key @param {string} of
   */
  const diagnose = async (state, key, of) => {
    const complaint = complaintOf(state) || null;
    const body = { ...askedLine(state), readings: readingsOf(state).now, complaint, costs: costsOf(state) };
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

  /** The drawing in which suspects are marked. @param {State} state @param {string} of */
  const draw = async (state, of) => {
    const job = isLoose(state) ? state.meter.about.job : state.desk?.job;
    const zone = meteredZone(state)?.id;
    const answer = await door.ask("drawing", { job, zone, state: "override" }, "sketch");
    set({ sketch: { of, answer } });
  };

  /** @param {State} state @param {string} of */
  const record = async (state, of) => {
    const body = { job: state.desk?.job, where: { zone: meteredZone(state)?.id } };
    set({ records: { of, answer: await door.ask("records", body, "records") } });
  };

  /** @param {State} state @param {string} key @param {string} of */
  const askAll = async (state, key, of) => {
    if (!state.meter.complaints) {
      set({ complaints: (await door.ask("complaint", {}, "complaint")).complaints });
    }
    const answer = await door.ask("expected", askedLine(state), "expected");
    if (asked !== key) return;
    set({ expected: { of, answer } });
    const anything = readingsOf(state).now.length > 0 || complaintOf(state);
    if (anything) await diagnose(state, key, of);
    else set({ diagnosis: null });
    if (asked === key) await draw(state, of);
    if (asked === key && !isLoose(state)) await record(state, of);
  };

  /** A first test of the whole job. @param {State} state */
  const test = async ({ desk, meter }) => {
    const body = { job: desk?.job, since: meter.run?.since };
    const answer = await door.ask("first_test", body, "first_test");
    const { run } = store.read().meter;
    if (run?.job === desk?.id && run) set({ run: { ...run, answer } });
  };

  /** What is asked on which screen, and about which line. @param {State} state */
  const wanted = (state) => {
    const { desk, meter, place } = state;
    if (place.screen === "test") {
      return desk && meter.run?.job === desk.id ? { of: "test", ask: test } : null;
    }
    if (PAPERS.includes(place.screen)) return desk ? { of: place.screen, ask: paper } : null;
    const zone = meteredZone(state);
    const landed = zone?.output ?? zone?.page_output;
    if (!zone || !landed) return null;
    return { of: lineOf(state), ask: askAll };
  };

  /** @param {State} state */
  const paper = async ({ desk, place: { screen } }) => {
    const which = screen === "schedule" ? "taps" : "test";
    const answer = await door.ask("sheet", { job: desk?.job, which }, "sheet");
    set({ paper: { of: `${desk?.id} ${screen}`, answer } });
  };

  /** What cannot be read goes back to where it was typed. @param {Refused} refused */
  const refuse = ({ problem: { words, remedy } }) => {
    const { about, entry } = store.read().meter;
    const last = about.readings.at(-1);
    set({
      about: { ...about, readings: about.readings.slice(0, -1) },
      entry: { ...entry, text: last?.value ?? "" },
    });
    store.change({ notice: { words: remedy ? say("edit.refused", { words, remedy }) : words, bad: true } });
  };

  /** Take up a first test where it was left. @param {State} state */
  const takeUp = async ({ desk, place, meter }) => {
    if (place.screen !== "test" || !desk || meter.run?.job === desk.id || opened === desk.id) return;
    opened = desk.id;
    const run = await keeper.read(runOf(desk.id));
    if (run && store.read().meter.run?.job !== desk.id) set({ run });
  };

  keeper.read(LOOSE).then((about) => {
    const now = store.read().meter.about;
    if (about && !now.on && !now.count) set({ about: { ...now, ...about } });
  });

  keeper.read(INSTRUMENT).then((instrument) => instrument && set({ instrument }));
  keeper.read(EFFORTS).then((efforts) => efforts && set({ efforts }));

  /** @param {State} state */
  return async (state) => {
    await takeUp(state);
    const want = state.engine.stage === "ready" ? wanted(state) : null;
    if (!want) {
      if (state.place.screen === "wrong") asked = ""; // its count is being changed: ask anew after that
      return;
    }
    const { desk, engine, manner, meter } = state;
    const line = isLoose(state) ? [meter.about.readings, meter.about.job?.id] : [desk?.id, desk?.job.rev];
    const of = [want.of, complaintOf(state), meter.run?.since, meter.efforts];
    const key = JSON.stringify([line, engine.version, manner, of]);
    if (asked === key) return;
    asked = key;
    set({ judging: want.ask !== paper });
    try {
      await want.ask(state, key, want.of);
    } catch (error) {
      if (error instanceof Overtaken) asked = asked === key ? "" : asked;
      else if (error instanceof Refused && isLoose(state)) refuse(error);
      else if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
    } finally {
      if (asked === key || !asked) set({ judging: false }); // else the newer question says when
    }
  };
};
