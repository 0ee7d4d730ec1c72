/** The one home of state. It changes as a whole, and whoever listens is told once per turn. */

/** @typedef {import("./state").State} State */

/**
 * @param {State} first
 */
export const makeStore = (first) => {
  let state = first;
  let told = true;
  /** @type {Array<(state: State) => void>} */
  const listeners = [];

  const tell = () => {
    told = true;
    for (const listen of listeners) listen(state);
  };

  return {
    /** @returns {State} */
    read: () => state,

    /** @param {Partial<State>} part */
    change(part) {
      state = { ...state, ...part };
      if (!told) return;
      told = false;
      queueMicrotask(tell);
    },

    /** @param {(state: State) => void} listen */
    listen(listen) {
      listeners.push(listen);
    },
  };
};

/** @typedef {ReturnType<typeof makeStore>} Store */
