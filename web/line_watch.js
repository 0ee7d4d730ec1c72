/**
 * Asks what the screen of a line needs, once for each state of its job: the drawing, the numbers
 * at a picked point, what could hang there instead, and which cable to pull.
 */

import { NoAnswer, Overtaken, Refused } from "./door.js";
import { stockOf } from "./kinds.js";

/** @typedef {import("./state").State} State */
/** @typedef {import("./line_state").LineState} LineState */
/** @typedef {"drawing" | "numbers" | "swaps" | "cabling"} Wanted */

const WIDE = "(min-width: 75rem) and (min-height: 32.01rem)";

/** @param {State} state */
const zoneOf = ({ desk, place }) =>
  place.screen === "zone" ? desk?.job.zones.find(({ id }) => id === place.zone) : undefined;

/** Whether the drawing is on the screen. @param {State} state */
export const isDrawn = ({ place: { screen, view = "list" }, line }) =>
  screen === "zone" && (view === "drawing" || (view === "list" && line.wide));

/** The loudspeaker, control or part whose numbers are wanted. @param {State} state */
const pickedPoint = (state) => {
  const { bench } = state;
  const at = bench?.is === "swap" || bench?.is === "option" ? bench.point : null;
  const id = bench?.is === "thing" ? bench.id : at;
  return zoneOf(state)?.line.find((point) => point.id === id);
};

/** What each answer is about, and in which state or of which stock; null: not wanted now. @param {State} state */
const wantedIn = (state) => {
  const { line, bench, place } = state;
  const zone = zoneOf(state);
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

/** @param {import("./shapes").House} house */
export const makeLineWatch = ({ store, door, keeper }) => {
  /** @type {Partial<Record<Wanted, string>>} */
  const asked = {};

  /** @param {Partial<LineState>} part */
  const set = (part) => store.change({ line: { ...store.read().line, ...part } });

  /** @type {Record<Wanted, (state: State) => Promise<any>>} */
  const asks = {
    drawing: ({ desk, place, line }) =>
      door.ask("drawing", { job: desk?.job, zone: place.zone, state: line.state }, "drawing"),
    numbers: (state) =>
      door.ask("point_numbers", { job: state.desk?.job, point: pickedPoint(state)?.id }, "numbers"),
    swaps: async (state) => {
      const body = { job: state.desk?.job, point: pickedPoint(state)?.id };
      return (await door.ask("swaps", body, "swaps")).options;
    },
    cabling: async (state) => {
      const body = { job: state.desk?.job, zone: state.place.zone };
      const choice = await door.ask("choose_cable", { ...body, stock: stockOf(state) }, "cable");
      return { choice, longest: await door.ask("longest_run", body, "longest") };
    },
  };

  /** @param {Wanted} what @param {string} key @param {State} state @param {string} of */
  const ask = async (what, key, state, of) => {
    asked[what] = key;
    try {
      const answer = await asks[what](state);
      if (asked[what] === key) set({ [what]: { of, answer } });
    } catch (error) {
      if (asked[what] === key && error instanceof Overtaken) asked[what] = "";
      if (![Overtaken, Refused, NoAnswer].some((kind) => error instanceof kind)) throw error;
    }
  };

  const query = matchMedia(WIDE);
  set({ wide: query.matches });
  query.addEventListener("change", () => set({ wide: query.matches }));
  keeper.read("line").then((kept) => kept && set(kept));

  /** @param {State} state */
  return async (state) => {
    if (!zoneOf(state) || state.engine.stage !== "ready") return;
    const about = Object.entries(wantedIn(state)).flatMap(([what, which]) => {
      const key = JSON.stringify([...baseOf(state), which]);
      if (!which || asked[/** @type {Wanted} */ (what)] === key) return [];
      return [{ what: /** @type {Wanted} */ (what), key, of: which[0] ?? "" }];
    });
    await Promise.all(about.map(({ what, key, of }) => ask(what, key, state, of)));
  };
};
