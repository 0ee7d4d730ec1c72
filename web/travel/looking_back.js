/** The states of a job, read from the device while its history is on the screen. */

import { ownStates } from "../states.js";

/** @param {Pick<import("../shapes").House, "store" | "keeper">} house */
export const makeLookingBack = ({ store, keeper }) => {
  let read = "";

  /** @param {import("../state").State} state */
  return async ({ place, desk }) => {
    if (place.screen !== "history" || !desk || desk.id !== place.job) {
      read = "";
      return;
    }
    const { id, job, kept } = desk;
    const key = `${id} ${job.rev} ${kept}`;
    if (key === read) return;
    read = key;
    const states = ownStates(await keeper.readStates(id));
    if (key === read) store.change({ past: { id, rev: job.rev, states } });
  };
};
