/**
 * The states of a job, read from the device while its history is on the screen, and what each
 * changed in the one before it: asked one after another, the newest first.
 */

import { NoAnswer, Overtaken, Refused } from "../door.js";
import { ownStates } from "../states.js";

/** @typedef {import("../state").PastState} PastState */

/** @param {Pick<import("../shapes").House, "store" | "keeper" | "door">} house */
export const makeLookingBack = ({ store, keeper, door }) => {
  let read = "";
  let asked = "";

  /** @param {string} key @param {readonly PastState[]} states the newest first */
  const tellChanges = async (key, states) => {
    for (const [at, { job: mine }] of states.entries()) {
      const before = states[at + 1]?.job;
      if (!before || key !== asked) return;
      const { changes, read: readings } = await door.ask("compare", { mine, theirs: before, base: before });
      const { past } = store.read();
      if (past?.id !== mine.id || key !== asked) return;
      const told = { changes: { ...past.changes, [mine.rev]: changes }, readings: { ...past.readings, [mine.rev]: readings } };
      store.change({ past: { ...past, ...told } });
    }
  };

  /** @param {import("../state").State} state */
  return async ({ place, desk, engine, manner }) => {
    if (place.screen !== "history" || !desk || desk.id !== place.job) {
      read = asked = "";
      return;
    }
    const { id, job, kept } = desk;
    const key = `${id} ${job.rev} ${kept}`;
    if (key !== read) {
      read = key;
      const states = ownStates(await keeper.readStates(id));
      if (key === read) store.change({ past: { id, rev: job.rev, states, changes: {}, readings: {} } });
      return;
    }
    const { past } = store.read();
    const question = `${key} ${JSON.stringify(manner)}`;
    if (engine.stage !== "ready" || question === asked || past?.rev !== job.rev) return;
    asked = question;
    try {
      await tellChanges(question, past.states);
    } catch (error) {
      // Without an answer the lines say what was done, as before.
      if (![NoAnswer, Overtaken, Refused].some((kind) => error instanceof kind)) throw error;
    }
  };
};
