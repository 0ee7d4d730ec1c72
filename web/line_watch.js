/**
 * Asks what the screen of a line needs, once for each state of its job: the drawing, the numbers
 * at a picked point, what could hang there instead, and which cable to pull.
 */

import { pickedPoint, wantedNow, zoneNow } from "./asked.js";
import { NoAnswer, Overtaken, Refused } from "./door.js";
import { stockOf } from "./kinds.js";

/** @typedef {import("./state").State} State */
/** @typedef {import("./line_state").LineState} LineState */
/** @typedef {import("./asked.js").Wanted} Wanted */

const WIDE = "(min-width: 75rem) and (min-height: 32.01rem)";

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

  /** @param {ReturnType<typeof wantedNow>[number]} wanted @param {State} state */
  const ask = async ({ what, key, of }, state) => {
    asked[what] = key;
    try {
      const answer = await asks[what](state);
      if (asked[what] === key) set({ [what]: { job: state.desk?.id, of, key, answer } });
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
    if (!zoneNow(state) || state.engine.stage !== "ready") return;
    const fresh = wantedNow(state).filter(({ what, key }) => asked[what] !== key);
    await Promise.all(fresh.map((wanted) => ask(wanted, state)));
  };
};
