/**
 * Where the copy of the started engine lies, and what this device has learned about copies.
 * A database of its own: it can be lost or thrown away without touching a job.
 */

import { deleteDB, openDB } from "../vendor/idb/index.js";

/**
 * What a copy says of itself: the build and browser it fits, the shape of the engine it was
 * taken from, the size and hash of its bytes, and the answer it must give when it is woken.
 * @typedef {{key: string, shape: import("./memory.js").Shape, length: number, digest: string,
 *   proof: string}} Label
 */
/**
 * `starts` that went well; `trying` stands while a copy is being woken; `leaves`: how often in
 * a row the person left in that moment; `spoiled`: how often the bytes had changed on the
 * shelf; `off`: why there are no copies on this device; `barred`: keys that failed.
 * @typedef {{starts: number, trying: boolean, leaves: number, spoiled: number, off: string,
 *   barred: string[]}} Notes
 */

/** @type {Notes} */
const FIRST_NOTES = { starts: 0, trying: false, leaves: 0, spoiled: 0, off: "", barred: [] };

const STORES = ["notes", "copy"];

/** @param {string} name */
const openBase = (name) =>
  openDB(name, 1, {
    upgrade(database) {
      for (const store of STORES) database.createObjectStore(store);
    },
    // Another engine throws the shelf away.
    blocking(_now, _wanted, { target }) {
      /** @type {IDBDatabase} */ (target).close();
    },
  });

// One that is just being left lets go within that time.
const LET_GO_WITHIN_MILLISECONDS = 1000;
// A start does not wait longer for a storage that does not answer: it does without the shelf.
const OPEN_WITHIN_MILLISECONDS = 5000;

/** Not one that waits for ever for another page that holds on to it. @param {string} name */
const remove = (name) =>
  new Promise((done, fail) => {
    const giveUp = () => fail(new Error("another page holds on to the shelf"));
    const blocked = () => setTimeout(giveUp, LET_GO_WITHIN_MILLISECONDS);
    deleteDB(name, { blocked }).then(done, fail);
  });

/** @param {unknown} error */
const isOfALaterVersion = (error) => error instanceof Error && error.name === "VersionError";

/**
 * A shelf that is not as it was made here is thrown away, with all that lies on it, and made anew.
 * @param {string} name
 */
const openWhole = async (name) => {
  const base = await openBase(name).catch((error) => {
    if (!isOfALaterVersion(error)) throw error;
  });
  if (base && STORES.every((store) => base.objectStoreNames.contains(store))) return base;
  base?.close();
  await remove(name);
  return openBase(name);
};

/** @template T @param {Promise<T>} opening @returns {Promise<T>} */
const inTime = (opening) =>
  new Promise((done, fail) => {
    const giveUp = () => fail(new Error("the storage does not answer"));
    const clock = setTimeout(giveUp, OPEN_WITHIN_MILLISECONDS);
    opening.then(done, fail).finally(() => clearTimeout(clock));
  });

export const openShelf = async () => {
  const place = new URL("./", self.location.href).pathname;
  const base = await inTime(openWhole(`rungline-engine ${place}`));

  return {
    /** @returns {Promise<Notes>} */
    async readNotes() {
      return { ...FIRST_NOTES, ...(await base.get("notes", "notes")) };
    },

    /** @param {Partial<Notes>} part */
    async changeNotes(part) {
      const writing = base.transaction("notes", "readwrite");
      const now = { ...FIRST_NOTES, ...(await writing.store.get("notes")), ...part };
      writing.store.put(now, "notes");
      await writing.done;
      return /** @type {Notes} */ (now);
    },

    /** @returns {Promise<Label | undefined>} */
    readLabel: () => base.get("copy", "label"),

    /** @returns {Promise<ArrayBuffer | undefined>} */
    readBytes: () => base.get("copy", "bytes"),

    /** Label and bytes arrive together or not at all. @param {Label} label @param {Uint8Array} bytes */
    async keepCopy(label, bytes) {
      const writing = base.transaction("copy", "readwrite");
      writing.store.put(label, "label");
      writing.store.put(bytes.buffer, "bytes");
      await writing.done;
    },

    dropCopy: () => base.clear("copy"),
  };
};

/** @typedef {Awaited<ReturnType<typeof openShelf>>} Shelf */
