/**
 * What the screen of a line asks of the core: of what, and in which state of it. An answer is shown
 * of no other job, and marked as long as one about what the job has become is on its way.
 */

import { stockOf } from "./kinds.js";

/** @typedef {import("./state").State} State */
/** @typedef {"drawing" | "numbers" | "swaps" | "cabling"} Wanted */
/** @typedef {import("./line_state").LineState} LineState */

/** @param {State} state */
export const zoneNow = ({ desk, place }) =>
  place.screen === "zone" ? desk?.job.zones.find(({ id }) => id === place.zone) : undefined;

/** Whether the drawing is on the screen. @param {State} state */
const isDrawn = ({ place: { screen, view = "list" }, line }) =>
  screen === "zone" && (view === "drawing" || (view === "list" && line.wide));

/** The loudspeaker, control or part whose numbers are wanted. @param {State} state */
export const pickedPoint = (state) => {
  const { bench } = state;
  const at = bench?.is === "swap" || bench?.is === "option" ? bench.point : null;
  const id = bench?.is === "thing" ? bench.id : at;
  return zoneNow(state)?.line.find((point) => point.id === id);
};

/** What each answer is about, and in which state or of which stock; null: not wanted now. @param {State} state */
const wantedIn = (state) => {
  const { line, bench, place } = state;
  const zone = zoneNow(state);
  const picked = pickedPoint(state);
  const loudspeaker = picked?.fitted.is === "loudspeaker";
  return {
    drawing: isDrawn(state) ? [zone?.id, line.state] : null,
    numbers: picked ? [picked.id] : null,
    swaps: loudspeaker && (bench?.is === "swap" || (bench?.is === "option" && bench.swap)) ? [picked.id] : null,
    cabling: place.view === "cable" ? [zone?.id, stockOf(state)] : null,
  };
};

/** All an answer depends on beside that. @param {State} state */
const baseOf = ({ desk, engine, manner }) =>
  [desk?.id, desk?.job.rev, engine.version, manner.length, manner.decimal];

/**
 * What is wanted now: each answer by the thing it is about and by a key that names all it depends on.
 * @param {State} state
 * @returns {Array<{what: Wanted, of: string, key: string}>}
 */
export const wantedNow = (state) =>
  Object.entries(wantedIn(state)).flatMap(([what, which]) =>
    which
      ? [{ what: /** @type {Wanted} */ (what), of: which[0] ?? "", key: JSON.stringify([...baseOf(state), which]) }]
      : [],
  );

/**
 * The last answer about what is on the screen; `late` when the job has changed since.
 * @template {Wanted} W
 * @param {State} state @param {W} what
 * @returns {{answer: NonNullable<LineState[W]>["answer"], late: boolean} | null}
 */
export const answerTo = (state, what) => {
  const asked = state.line[what];
  const wanted = wantedNow(state).find((each) => each.what === what);
  if (!asked || !wanted || asked.of !== wanted.of || asked.job !== state.desk?.id) return null;
  return { answer: asked.answer, late: asked.key !== wanted.key };
};
