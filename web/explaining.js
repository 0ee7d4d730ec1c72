/**
 * Asks how the opened number came to be, and asks again when the job it is of has changed under it:
 * a number and its working never tell of two states.
 */

import { NoAnswer, Overtaken, Refused } from "./door.js";
import { say } from "./say.js";

/** @typedef {import("./state").State} State */
/** @typedef {Extract<import("./state").Bench, {is: "working"}>} Opened */

/** The job whose numbers are on the screen. @param {State} state */
const jobShown = ({ place, tally, desk }) =>
  place.screen === "tally" ? tally.answer?.job : desk?.job;

/** @param {import("./shapes").House} house */
export const makeExplaining = ({ store, door }) => {
  /** @param {Opened} asked @param {Partial<Opened>} part */
  const tell = (asked, part) => {
    const { bench } = store.read();
    const isSame = bench?.is === "working" && bench.finding === asked.finding && bench.of === asked.of;
    if (isSame) store.change({ bench: { ...bench, ...part } });
  };

  /** @param {Opened} asked @param {unknown} error */
  const fail = (asked, error) => {
    if (error instanceof Overtaken) return;
    if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
    const words = error instanceof Refused ? error.problem.words : say("engine.no_answer");
    tell(asked, { answer: null, failed: words });
  };

  /** @param {State} state */
  return async (state) => {
    const { bench } = state;
    const of = jobShown(state);
    if (bench?.is !== "working" || !bench.finding || !of || bench.of === of) return;
    const asked = { ...bench, of };
    store.change({ bench: asked });
    try {
      const body = { job: of, finding: bench.finding, ...JSON.parse(bench.would) };
      tell(asked, { answer: await door.ask("working", body, "working"), failed: null });
    } catch (error) {
      fail(asked, error);
    }
  };
};
