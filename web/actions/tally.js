/** What touches on the tally do. Rows are texts as typed; the core reads and adds them. */

import { NoAnswer, Overtaken, Refused } from "../door.js";
import { goTo } from "../address.js";
import { withToday } from "../manner.js";
import { say } from "../say.js";

/** @typedef {import("../state").Tally} Tally */
/** @typedef {import("../state").TallyRow} TallyRow */

const MOST_DIGITS = 4;
const MOST_OTHER = 8;
const MOST_OUTPUTS = 8;

/** @type {Tally} */
export const emptyTally = {
  line_v: "",
  amplifier_w: "",
  outputs: [],
  rows: [],
  count: "",
  other: null,
  output: 0,
  line: "",
  line_problem: null,
  answer: null,
};

/** @param {Tally} tally */
export const tallyQuestion = ({ line_v, amplifier_w, outputs, rows }) => ({
  line_v,
  amplifier_w,
  outputs,
  rows: rows.map(({ count, tap_w, output }) => ({ count, tap_w, output })),
});

const makeKey = () => `${Date.now().toString(36)}${Math.random().toString(36).slice(2, 6)}`;

/** @param {string} count @param {1 | -1} by */
const step = (count, by) => {
  const next = Number(count) + by;
  return Number.isInteger(next) && next > 0 ? String(next) : count;
};

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const tallyActions = ({ store, door, keeper }) => {
  /** @param {Partial<Tally>} part */
  const set = (part) => store.change({ tally: { ...store.read().tally, ...part } });

  const nowIds = { job: "tally", hand: "tal", next: 1 };

  const ask = async () => {
    const { tally } = store.read();
    try {
      const body = { ...tallyQuestion(tally), ids: nowIds, name: say("tally.title") };
      const answer = await door.ask("tally", body, "tally");
      // What was typed or chosen in another manner reads as the core prints it now.
      const printed = store.read().tally.rows.map((row, at) => ({
        ...row,
        shown_tap: answer.rows[at]?.tap || row.shown_tap,
      }));
      set({ answer, rows: printed });
      await keeper.keep("tally", store.read().tally);
    } catch (error) {
      if (error instanceof Overtaken) return;
      complain(error);
    }
  };

  /** What was said of the tally before: the way back to another one, and how its numbers came to be. */
  const letGo = () => {
    const { notice, bench } = store.read();
    if (notice?.again === "tally.put_back") store.change({ notice: null });
    if (bench?.is === "working") store.change({ bench: bench.back });
  };

  /** Change what the core must see: keep it, then ask. @param {Partial<Tally>} part */
  const alter = (part) => {
    letGo();
    set(part);
    keeper.keep("tally", store.read().tally);
    return ask();
  };

  /** @param {string} count @param {string} tap_w @param {string} shown_tap */
  const addRow = (count, tap_w, shown_tap) => {
    const { rows, output } = store.read().tally;
    const row = { key: makeKey(), count, tap_w, shown_tap, output };
    return alter({ rows: [...rows, row], count: "", other: null, line: "", line_problem: null });
  };

  /** @param {string} key @param {(row: TallyRow) => TallyRow} change */
  const alterRow = (key, change) => {
    const { rows } = store.read().tally;
    return alter({ rows: rows.map((row) => (row.key === key ? change(row) : row)) });
  };

  return {
    "tally.ask": ask,

    "tally.field": ({ data, text }) => alter({ [data.field ?? ""]: text }),

    "tally.volts": ({ data }) => alter({ line_v: data.text ?? "" }),

    "tally.digit": ({ data: { digit = "" } }) => {
      const { count, other } = store.read().tally;
      if (other !== null) return set({ other: `${other}${digit}`.slice(0, MOST_OTHER) });
      set({ count: `${count}${digit}`.replace(/^0+/, "").slice(0, MOST_DIGITS) });
    },

    "tally.erase": () => {
      const { count, other } = store.read().tally;
      if (other === null) return set({ count: count.slice(0, -1) });
      set({ other: other ? other.slice(0, -1) : null });
    },

    "tally.tap": ({ data: { tap = "", shown = "" } }) => {
      const { count, rows, output } = store.read().tally;
      if (count) return addRow(count, tap, shown);
      const same = rows.findLast((row) => row.tap_w === tap && row.output === output);
      if (!same) return addRow("1", tap, shown);
      return alterRow(same.key, (row) => ({ ...row, count: step(row.count, 1) }));
    },

    "tally.other": () => set({ other: store.read().tally.other === null ? "" : null }),

    "tally.other_add": () => {
      const { count, other } = store.read().tally;
      if (other) return addRow(count || "1", other, say("tally.typed_tap", { text: other }));
    },

    "tally.more": ({ data: { key = "" } }) =>
      alterRow(key, (row) => ({ ...row, count: step(row.count, 1) })),

    "tally.less": ({ data: { key = "" } }) =>
      alterRow(key, (row) => ({ ...row, count: step(row.count, -1) })),

    "tally.remove": ({ data: { key } }) =>
      alter({ rows: store.read().tally.rows.filter((row) => row.key !== key) }),

    "tally.line": ({ text }) => set({ line: text, line_problem: null }),

    "tally.line_add": () => {
      const { line } = store.read().tally;
      const [, count, tap] = /^\s*(\d+)\s*(?:[x×*@]|at|of)\s*(.+?)\s*$/i.exec(line) ?? [];
      if (!count || !tap) return set({ line_problem: say("tally.line_problem") });
      return addRow(count, tap, /\d$/.test(tap) ? say("tally.typed_tap", { text: tap }) : tap);
    },

    "tally.output_add": () => {
      const { outputs } = store.read().tally;
      const grown = outputs.length ? [...outputs, { max_w: "" }] : [{ max_w: "" }, { max_w: "" }];
      if (grown.length <= MOST_OUTPUTS) return alter({ outputs: grown });
    },

    "tally.output_drop": () => {
      const { outputs, rows, output } = store.read().tally;
      const fewer = outputs.length > 2 ? outputs.slice(0, -1) : [];
      const last = Math.max(0, fewer.length - 1);
      const moved = rows.map((row) => ({ ...row, output: Math.min(row.output, last) }));
      return alter({ outputs: fewer, rows: moved, output: Math.min(output, last) });
    },

    "tally.output_max": ({ data, text }) => {
      const { outputs } = store.read().tally;
      const at = Number(data.index);
      return alter({ outputs: outputs.map((each, i) => (i === at ? { max_w: text } : each)) });
    },

    "tally.output_pick": ({ data }) => set({ output: Number(data.index) }),

    "tally.fits": () => store.change({ bench: { is: "fits" } }),

    "tally.clear": () => {
      const { tally } = store.read();
      const { line_v, amplifier_w } = tally;
      keeper.keep("tally_before", tally);
      const asked = alter({ ...emptyTally, line_v, amplifier_w });
      store.change({
        notice: { words: say("tally.cleared"), bad: false, again: "tally.put_back", on: "tally" },
      });
      return asked;
    },

    "tally.put_back": async () => {
      const before = await keeper.read("tally_before");
      if (before) return alter({ ...emptyTally, ...before });
    },

    "tally.keep": async () => {
      const { tally } = store.read();
      const spare = tally.rows.reduce((sum, row) => sum + (Number(row.count) || 0), 100);
      const { hand, first } = await keeper.takeNumbers(spare);
      const ids = { job: `${hand}${first}`, hand, next: first + 1 };
      const name = say("tally.kept_name", { day: withToday(store.read().manner).today });
      try {
        const answer = await door.ask("tally", { ...tallyQuestion(tally), ids, name });
        // A job must not be made without what could not be read.
        const unread = answer.problems?.length || answer.rows.some(({ problem }) => problem);
        if (unread) return store.change({ notice: { words: say("tally.unread"), bad: true } });
        await keepNew(answer);
      } catch (error) {
        complain(error);
      }
    },
  };

  /** @param {unknown} error */
  function complain(error) {
    if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
    const words = error instanceof Refused ? error.problem.words : say("engine.no_answer");
    store.change({ notice: { words, bad: true } });
  }

  /** @param {import("../state").TallyAnswer} answer */
  async function keepNew({ job, findings, points, faces }) {
    const record = { id: job.id, job, seen: { findings, points, faces }, manner: "" };
    await keeper.keepJob({ ...record, waiting: [], undo: [], redo: [] }, { over: null });
    store.change({ jobs: await keeper.listJobs() });
    goTo({ screen: "job", job: job.id });
  }
};
