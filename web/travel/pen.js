/** Waiting until it is known which tab may write to a job. */

/**
 * @param {import("../store.js").Store} store @param {string} id
 * @returns {Promise<boolean>} whether this tab may
 */
export const penDecided = (store, id) =>
  new Promise((resolve) => {
    const look = () => {
      const { desk, missing } = store.read();
      if (missing || desk?.id !== id) return resolve(false);
      if (desk.pen !== "asking") resolve(desk.pen === "mine");
    };
    store.listen(look);
    look();
  });
