/** What touches at one loudspeaker do: turn its tap, say how it is known, tick it, swap it. */

import { answerTo } from "../asked.js";
import { keptOf } from "../line_first.js";
import { withToday } from "../manner.js";

/** @typedef {import("../state").Command} Command */
/** @typedef {import("../line_state").Known} Known */
/** @typedef {import("../line_state").LineState} LineState */

const makeKey = () => crypto.getRandomValues(new Uint32Array(2)).join("-");

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const ladderActions = ({ store, edits, keeper }) => {
  /** @param {Command} command @param {{apart?: boolean}} [how] */
  const send = (command, how = {}) =>
    edits.send({ key: makeKey(), words: `do.${command.do}`, steps: [{ command }], ...how });

  /** @param {Partial<LineState>} part */
  const remember = (part) => {
    const line = { ...store.read().line, ...part };
    store.change({ line });
    return keeper.keep("line", keptOf(line));
  };

  /** @param {string} id */
  const fittedAt = (id) =>
    store
      .read()
      .desk?.job.zones.flatMap(({ line }) => line)
      .find((point) => point.id === id)?.fitted;

  return {
    "point.tap": ({ data: { point = "", tap, at } }) => {
      const seen = store.read().line.turning;
      return send({ do: "set_tap", point, tap_w: Number(tap), tap_at_v: Number(at), seen });
    },

    "ladder.known": async ({ data: { point = "", seen = "" } }) => {
      const fitted = fittedAt(point);
      await remember({ turning: /** @type {Known} */ (seen) });
      if (!fitted || fitted.seen === seen) return;
      const { tap_w = null, tap_at_v = null } = fitted;
      if (typeof fitted.direct_ohm === "number") {
        return send({ do: "change_point", point, changes: { seen } });
      }
      return send({ do: "set_tap", point, tap_w, tap_at_v, seen });
    },

    "ladder.initials": ({ text }) => remember({ initials: text.trim() }),

    "ladder.tick": ({ data: { point = "" } }) => {
      const { line, manner } = store.read();
      const { today: at } = withToday(manner);
      return send({ do: "tick", point, at, initials: line.initials }, { apart: true });
    },

    "ladder.untick": ({ data: { point = "" } }) => send({ do: "untick", point }, { apart: true }),

    "ladder.swap_open": ({ data: { point = "" } }) =>
      store.change({ bench: { is: "swap", point } }),

    "ladder.swap_close": ({ data: { point = "" } }) =>
      store.change({ bench: { is: "thing", id: point } }),

    "ladder.why": ({ data: { point = "", tap, at, swap = "", title = "" } }) => {
      const other = answerTo(store.read(), "swaps")?.answer.find(({ kind }) => kind === swap);
      const turned = { do: "set_tap", point, tap_w: Number(tap), tap_at_v: Number(at) };
      const command = /** @type {Command} */ (other?.command ?? turned);
      store.change({ bench: { is: "option", point, command, swap, title } });
    },

    "ladder.take": () => {
      const { bench, line } = store.read();
      if (bench?.is !== "option") return;
      store.change({ bench: { is: "thing", id: bench.point } });
      return send({ ...bench.command, seen: line.turning });
    },

    "ladder.swap": ({ data: { at } }) => {
      const state = store.read();
      const { bench } = state;
      const swap = answerTo(state, "swaps")?.answer[Number(at)];
      if (!swap || bench?.is !== "swap") return;
      store.change({ bench: { is: "thing", id: bench.point } });
      const { turning: seen } = state.line;
      return send({ .../** @type {Command} */ (swap.command), seen });
    },
  };
};
