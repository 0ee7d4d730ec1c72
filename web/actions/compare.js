/** What touches on two states side by side do: choose for each change, take it over. */

import { goTo } from "../address.js";
import { NoAnswer, Refused } from "../door.js";
import { say } from "../say.js";
import { rememberLink } from "../travel/fragment.js";
import { penDecided } from "../travel/pen.js";

/** @typedef {import("../state").Comparing} Comparing */
/** @typedef {import("../state").Taken} Taken */

const makeKey = () => crypto.getRandomValues(new Uint32Array(2)).join("-");

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const compareActions = ({ store, door, edits, arriving, copies }) => {
  /** @param {Partial<Comparing>} part */
  const set = (part) => {
    const { comparing } = store.read();
    if (comparing) store.change({ comparing: { ...comparing, problem: null, ...part } });
  };

  /** @param {"mine" | "theirs"} side */
  const takeAll = (side) => {
    const changes = store.read().comparing?.answer.changes ?? [];
    set({ taken: Object.fromEntries(changes.map(({ id }) => [id, side])) });
  };

  /** Compare anew when the job is not what it was. @param {Comparing} comparing */
  const isOld = async ({ theirs, base, rev, taken }) => {
    const job = store.read().desk?.job;
    if (!job || job.rev === rev) return false;
    const answer = await door.ask("compare", { mine: job, theirs, base });
    const known = new Set(answer.changes.map(({ id }) => id));
    const still = Object.entries(taken).filter(([id]) => known.has(id));
    set({ answer, rev: job.rev, taken: Object.fromEntries(still) });
    store.change({ notice: { words: say("compare.moved"), bad: false } });
    return true;
  };

  /** @param {Comparing} comparing @param {import("../state").Job} mine */
  const apply = async ({ id, theirs, base, taken, past }, mine) => {
    const merge = { theirs, base, taken };
    // Tried first, so that a clash is named here, beside the choices.
    const { job } = await door.ask("merge", { mine, ...merge });
    if (past) {
      const step = { command: { do: "restore", past: job } };
      await edits.send({ key: makeKey(), words: "do.restore", steps: [step] });
    } else {
      await edits.send({ key: makeKey(), words: "do.merge", steps: [], merge });
      rememberLink(null);
      arriving.forget();
      await copies.mark([theirs]);
    }
    goTo({ screen: "job", job: id });
    store.change({ comparing: null, notice: { words: say("compare.taken"), bad: false } });
  };

  return {
    "compare.take": ({ data: { change = "", side } }) => {
      const taken = { ...store.read().comparing?.taken };
      taken[change] = side === "theirs" ? "theirs" : "mine";
      set({ taken });
    },

    "compare.all_mine": () => takeAll("mine"),

    "compare.all_theirs": () => takeAll("theirs"),

    "compare.apply": async () => {
      const { comparing, desk } = store.read();
      if (!comparing || !desk || desk.id !== comparing.id) return;
      if (!(await penDecided(store, desk.id))) {
        return store.change({ notice: { words: say("open.busy"), bad: true } });
      }
      if (await isOld(comparing)) return;
      try {
        await apply(comparing, desk.job);
      } catch (error) {
        if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
        const no = { words: say("engine.no_answer"), remedy: null };
        set({ problem: error instanceof Refused ? error.problem : no });
      }
    },
  };
};
