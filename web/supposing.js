/** Asks what would be if what is supposed were so, once for each state of the job. */

import { NoAnswer, Overtaken, Refused } from "./door.js";
import { say } from "./say.js";
import { aboutOf, keyOf, supposedIn } from "./supposed.js";

/** @typedef {import("./state").State} State */
/** @typedef {import("./line_state").WhatIf} WhatIf */

/** @param {unknown} error */
const problemOf = (error) => {
  if (error instanceof Refused) return { words: error.problem.words, remedy: error.problem.remedy };
  if (error instanceof NoAnswer) return { words: say("engine.no_answer"), remedy: null };
  throw error;
};

/** @param {import("./shapes").House} house */
export const makeSupposing = ({ store, door }) => {
  /** @type {string | null} */
  let last = null;

  /** @param {Partial<WhatIf>} part */
  const set = (part) => {
    const { line } = store.read();
    store.change({ line: { ...line, what_if: { ...line.what_if, ...part } } });
  };

  /** @param {State} state */
  return async (state) => {
    const key = keyOf(state);
    if (key === last || state.engine.stage !== "ready") return;
    last = key;
    const asked = supposedIn(state);
    if (!key || !asked) return state.line.what_if.problem ? set({ problem: null }) : undefined;
    try {
      const answer = await door.ask("what_if", { job: state.desk?.job, ...asked }, "what_if");
      if (last === key) set({ answer, asked, key, about: aboutOf(state), problem: null });
    } catch (error) {
      if (last !== key) return;
      if (error instanceof Overtaken) last = null;
      else set({ answer: null, problem: problemOf(error) });
    }
  };
};
