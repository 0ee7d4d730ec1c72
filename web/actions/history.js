/** What touches on the history of a job do: go back, or compare with now. */

import { goTo } from "../address.js";
import { say } from "../say.js";

const makeKey = () => crypto.getRandomValues(new Uint32Array(2)).join("-");

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const historyActions = ({ store, door, edits }) => {
  /** @param {string} rev */
  const stateOf = (rev) => store.read().past?.states.find(({ job }) => `${job.rev}` === rev)?.job;

  return {
    "history.back": async ({ data: { rev = "" } }) => {
      const past = stateOf(rev);
      if (!past) return;
      const step = { command: { do: "restore", past } };
      await edits.send({ key: makeKey(), words: "do.restore", steps: [step] });
      goTo({ screen: "job", job: past.id });
      const { notice, desk } = store.read();
      if (!notice?.bad && desk?.pen !== "theirs") {
        store.change({ notice: { words: say("history.restored"), bad: false } });
      }
    },

    "history.compare": async ({ data: { rev = "" } }) => {
      const then = stateOf(rev);
      const { desk } = store.read();
      if (!then || !desk) return;
      const { id, job: mine } = desk;
      // Going back touches neither readings nor ticks, so they are no difference.
      const theirs = { ...then, readings: mine.readings, ticks: mine.ticks };
      const answer = await door.ask("compare", { mine, theirs, base: theirs });
      const how = { base: theirs, past: true, taken: {}, problem: null };
      store.change({ comparing: { id, rev: mine.rev, theirs, answer, ...how } });
      goTo({ screen: "compare", job: id });
    },
  };
};
