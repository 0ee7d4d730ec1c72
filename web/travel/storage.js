/** Whether this browser keeps what is stored. Asked for once, at the first thing worth keeping. */

/** @param {Pick<import("../shapes").House, "store" | "keeper">} house */
export const makeStorage = ({ store, keeper }) => {
  // Until it is known whether this device was asked before, it is not asked.
  let asked = true;
  const { storage } = navigator;

  /** Ask the browser to keep it all; some ask the person in turn. */
  const ask = async () => {
    asked = true;
    const kept_for_good = (await storage?.persist?.().catch(() => null)) ?? null;
    store.change({ kept_for_good });
    await keeper.keep("asked_for_good", true);
  };

  return {
    ask,

    async remember() {
      asked = (await keeper.read("asked_for_good")) ?? false;
      store.change({ kept_for_good: (await storage?.persisted?.().catch(() => null)) ?? null });
    },

    /** The first job that is kept is the first thing to lose. @param {import("../state").State} state */
    follow: async ({ desk, kept_for_good }) => {
      // What is on the desk has been read from what is kept.
      if (asked || kept_for_good || !desk) return;
      await ask();
    },
  };
};
