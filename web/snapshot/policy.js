/** When a copy of the started engine may be made, and when it may be woken. Decides, does nothing. */

/** @typedef {import("./shelf.js").Notes} Notes */
/** @typedef {import("./shelf.js").Label} Label */
/** @typedef {{memory: number | undefined, room: number | undefined}} Device */

// A copy has some 32 MB, and is held twice while it is made and woken.
const LEAST_MEMORY_GIGABYTES = 2;
const LEAST_ROOM_BYTES = 250_000_000;
// Where the browser does not tell its memory, this many good starts must speak for it.
const GOOD_STARTS_FIRST = 2;
const MOST_LEAVES = 2;
const MOST_SPOILED = 1;

/** @returns {Promise<Device>} */
export const askDevice = async () => {
  const { deviceMemory } = /** @type {{deviceMemory?: number}} */ (navigator);
  const { quota, usage } = (await navigator.storage?.estimate?.()) ?? {};
  const room = quota === undefined ? undefined : quota - (usage ?? 0);
  return { memory: deviceMemory, room };
};

/**
 * What a mark that was never taken away means. A page that was left while its engine started
 * explains it, but not again and again; otherwise the start took the page down with it.
 * @param {Notes} notes @param {boolean} left
 * @returns {Partial<Notes> | null}
 */
export const explainMark = ({ trying, leaves }, left) => {
  if (!trying) return null;
  if (left && leaves < MOST_LEAVES) return { trying: false, leaves: leaves + 1 };
  return { trying: false, off: "a start with it did not come to an end" };
};

/** @param {Notes} notes @param {string} key */
export const mayUse = ({ off, barred }, key) => !off && !barred.includes(key);

/** @param {Notes} notes @param {string} key @param {Device} device */
export const mayMake = (notes, key, { memory, room }) => {
  if (!mayUse(notes, key)) return false;
  if (room !== undefined && room < LEAST_ROOM_BYTES) return false;
  if (memory === undefined) return notes.starts >= GOOD_STARTS_FIRST;
  return memory > LEAST_MEMORY_GIGABYTES;
};

/** Bytes that changed on the shelf once may be an accident; twice is this device's storage. @param {Notes} notes */
export const noteSpoiled = ({ spoiled }) =>
  spoiled < MOST_SPOILED
    ? { trying: false, spoiled: spoiled + 1 }
    : { trying: false, spoiled: spoiled + 1, off: "this device does not keep it whole" };

/** Whether something could not be kept because this device has no room for it. @param {unknown} error */
export const isFull = (error) => error instanceof Error && error.name === "QuotaExceededError";

/** @param {Notes} notes @param {string} key @returns {Partial<Notes>} */
export const noteFailed = ({ barred }, key) => ({
  trying: false,
  barred: [...barred.filter((each) => each !== key).slice(-9), key],
});
