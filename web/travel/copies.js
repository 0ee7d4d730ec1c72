/** Which state of each job has a copy elsewhere, and when to remind of keeping one. */

/** @typedef {import("../state").State} State */

const REMIND_AFTER = 20;

/**
 * The state noted for a job, if any. An id may be the name of something every object has.
 * @param {Record<string, number>} noted @param {string} id
 */
export const notedOf = (noted, id) => (Object.hasOwn(noted, id) ? noted[id] : undefined);

/** How many changes of the open job are on this device only. @param {State} state */
export const notCopied = ({ desk, copied }) =>
  desk ? desk.job.rev - (notedOf(copied, desk.id) ?? 0) : 0;

/** Whether to remind now: quietly, and not again until as many more were made. @param {State} state */
export const isDue = (state) => {
  const { desk, reminded } = state;
  if (!desk || notCopied(state) < REMIND_AFTER) return false;
  return desk.job.rev - (notedOf(reminded, desk.id) ?? 0) >= REMIND_AFTER;
};

/** @param {Pick<import("../shapes").House, "store" | "keeper">} house */
export const makeCopies = ({ store, keeper }) => ({
  async remember() {
    const [copied, reminded] = await Promise.all([keeper.read("copied"), keeper.read("reminded")]);
    store.change({ copied: copied ?? {}, reminded: reminded ?? {} });
  },

  /** A copy of this state has left the device, or came from elsewhere. @param {{id: string, rev: number}[]} jobs */
  async mark(jobs) {
    const now = Object.fromEntries(jobs.map(({ id, rev }) => [id, rev]));
    const copied = { ...store.read().copied, ...now };
    store.change({ copied });
    await keeper.keep("copied", copied);
  },

  async later() {
    const { desk, reminded: before } = store.read();
    if (!desk) return;
    const reminded = { ...before, [desk.id]: desk.job.rev };
    store.change({ reminded });
    await keeper.keep("reminded", reminded);
  },
});
