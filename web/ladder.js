/** At one loudspeaker: what each tap would do, asked before anything is turned. */

import { Overtaken, Refused, NoAnswer } from "./door.js";
import { tapsOf } from "./taps.js";

/** @typedef {import("./state").State} State */

/** @param {State} state */
const pickedLoudspeaker = ({ bench, desk, place }) => {
  const zone = desk?.job.zones.find(({ id }) => id === place.zone);
  const id = bench?.is === "thing" ? bench.id : bench?.is === "option" ? bench.point : null;
  const point = zone?.line.find((each) => each.id === id);
  return zone && point?.fitted.is === "loudspeaker" ? { zone, point } : null;
};

/** @param {import("./shapes").House} house */
export const makeLadder = ({ store, door }) => {
  let asked = "";

  /** Ask once for each loudspeaker and each state of its job. @param {State} state */
  return async (state) => {
    const picked = pickedLoudspeaker(state);
    if (!picked) asked = "";
    if (!picked || !state.desk || state.engine.stage !== "ready") return;
    const { zone, point } = picked;
    const { job } = state.desk;
    const key = JSON.stringify([job.id, job.rev, point.id, state.manner]);
    if (key === asked) return;
    asked = key;
    const taps = tapsOf(state, zone, point.fitted);
    const commands = taps.map(({ tap_w, at_v }) => ({
      do: "set_tap",
      point: point.id,
      tap_w,
      tap_at_v: at_v,
    }));
    try {
      const { options } = await door.ask("preview", { job, commands }, "preview");
      const named = taps.map(({ tap_w }, number) => [`${tap_w}`, options[number]]);
      store.change({
        preview: { point: point.id, rev: job.rev, options: Object.fromEntries(named) },
      });
    } catch (error) {
      const known = [Overtaken, Refused, NoAnswer].some((kind) => error instanceof kind);
      if (!known) throw error;
    }
  };
};
