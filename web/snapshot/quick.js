/**
 * A start from a copy of the started engine, where this device has one and nothing speaks
 * against it. The usual start stands behind every step: whatever fails here is noted, the copy
 * thrown away, and the engine started as if there were none.
 *
 * The hash seed of the copy is the one of the start it was taken from. The core uses no chance
 * and no clock, so nothing else of that moment lives on in it.
 */

import { hash, makeRoom, measure } from "./memory.js";
import { askDevice, explainMark, mayMake, mayUse, noteFailed, noteSpoiled } from "./policy.js";
import { prove } from "./proof.js";
import { openShelf } from "./shelf.js";

/** @typedef {import("./proof.js").Handle} Handle */
/** @typedef {import("./memory.js").Module} Module */
/** @typedef {import("./shelf.js").Shelf} Shelf */
/** @typedef {import("./shelf.js").Label} Label */
/** @typedef {{handle: Handle, copy(): Uint8Array<ArrayBuffer>, module: Module | null}} Engine */
/** @typedef {(how: {makes?: boolean, bytes?: Uint8Array,
 *   onModule?: (module: Module) => Promise<void>}) => Promise<Engine>} Start */
/** @typedef {"copy" | "made" | "plain" | "off"} Way */
/** @typedef {{handle: Handle, way: Way, later: () => Promise<void>}} Started */

/** The bytes are not those that were kept. */
class Spoiled extends Error {}

const nothingLater = async () => {};
const LOCK = `rungline-engine ${new URL("../", import.meta.url).pathname}`;

/**
 * One engine at a time on this device looks at the copy: a mark found by the next is then
 * never the mark of a start that still goes on.
 * @param {() => Promise<Engine | "none">} act
 * @returns {Promise<Engine | "none" | "busy">}
 */
const alone = (act) =>
  navigator.locks.request(LOCK, { ifAvailable: true }, async (lock) => (lock ? act() : "busy"));

/**
 * The label of a copy that fits; any other copy is of no use any more.
 * @param {Shelf} shelf @param {string} key
 */
const findLabel = async (shelf, key) => {
  const label = await shelf.readLabel();
  if (label?.key === key) return label;
  if (label) await shelf.dropCopy();
  return null;
};

/** @param {Shelf} shelf @param {Label} label */
const readWhole = async (shelf, { length, digest }) => {
  const bytes = await shelf.readBytes();
  const whole = bytes?.byteLength === length && (await hash(bytes)) === digest;
  if (!bytes || !whole) throw new Spoiled("the copy has changed on the shelf");
  return new Uint8Array(bytes);
};

/**
 * Wake the copy and put it the questions. Its bytes are read and hashed while the runtime is
 * compiled; the runtime is given the room for them at once, and they are put there in time.
 * @param {Shelf} shelf @param {Start} start @param {Label} label @param {Promise<unknown>} marked
 */
const tryCopy = async (shelf, start, label, marked) => {
  const reading = readWhole(shelf, label);
  // Reported where it is waited for.
  reading.catch(() => {});
  const bytes = new Uint8Array(label.length);
  const onModule = async (/** @type {Module} */ module) => {
    bytes.set(await reading);
    await marked;
    makeRoom(module, label.shape);
  };
  const engine = await start({ bytes, onModule });
  if (prove(engine.handle) !== label.proof) throw new Error("the copy answers wrongly");
  return engine;
};

/**
 * Before a copy is touched a mark is set, and it is taken away when that went well or failed in
 * good order. Whoever finds it standing knows that the start took the page down with it.
 * @param {Shelf} shelf @param {string} key @param {Start} start @param {boolean} left
 */
const wake = async (shelf, key, start, left) => {
  const before = await shelf.readNotes();
  const notes = await shelf.changeNotes(explainMark(before, left) ?? {});
  if (!mayUse(notes, key)) await shelf.dropCopy();
  const label = mayUse(notes, key) ? await findLabel(shelf, key) : null;
  if (!label) return "none";
  const marked = shelf.changeNotes({ trying: true });
  try {
    const engine = await tryCopy(shelf, start, label, marked);
    await shelf.changeNotes({ trying: false, leaves: 0, starts: notes.starts + 1 });
    return engine;
  } catch (error) {
    console.warn("started without the copy:", String(error));
    await marked;
    await shelf.dropCopy();
    const spoiled = error instanceof Spoiled;
    await shelf.changeNotes(spoiled ? noteSpoiled(notes) : noteFailed(notes, key));
    return "none";
  }
};

/**
 * Start as ever, but so that a copy can be taken; it is kept when the engine is quiet.
 * @param {Shelf} shelf @param {string} key @param {Start} start
 * @returns {Promise<Started | null>}
 */
const startAndCopy = async (shelf, key, start) => {
  try {
    const { handle, copy, module } = await start({ makes: true });
    if (!module) throw new Error("the engine was not made in a way that can be copied");
    const proof = prove(handle);
    const shape = measure(module);
    const bytes = copy();
    const keep = async () => {
      const digest = await hash(bytes);
      await shelf.keepCopy({ key, shape, length: bytes.length, digest, proof }, bytes);
    };
    return { handle, way: "made", later: keep };
  } catch (error) {
    console.warn("no copy could be taken:", String(error));
    await shelf.changeNotes(noteFailed(await shelf.readNotes(), key));
    return null;
  }
};

/**
 * @param {Shelf} shelf @param {string} key @param {Start} start @param {boolean} makes
 * @returns {Promise<Started>}
 */
const startWithout = async (shelf, key, start, makes) => {
  const notes = await shelf.readNotes();
  const may = makes && mayMake(notes, key, await askDevice());
  const made = may ? await startAndCopy(shelf, key, start) : null;
  const { handle } = made ?? (await start({}));
  const now = await shelf.changeNotes({ starts: notes.starts + 1, leaves: 0 });
  return made ?? { handle, way: mayUse(now, key) ? "plain" : "off", later: nothingLater };
};

/**
 * Start the engine in the quickest way this device allows.
 * @param {{start: Start, build: string, left: boolean}} parts
 *   `left`: the page before this one was left while its engine started
 * @returns {Promise<Started>}
 */
export const startQuickly = async ({ start, build, left }) => {
  const key = `1 ${build} ${navigator.userAgent}`;
  /** @returns {Promise<Started>} */
  const startPlain = async () => {
    const { handle } = await start({});
    return { handle, way: "plain", later: nothingLater };
  };
  const shelf = navigator.locks ? await openShelf().catch(() => null) : null;
  if (!shelf) return startPlain();
  // A shelf that cannot be read is no reason not to start.
  const woken = await alone(() => wake(shelf, key, start, left)).catch(() => "busy");
  if (typeof woken === "object") return { handle: woken.handle, way: "copy", later: nothingLater };
  return startWithout(shelf, key, start, woken === "none");
};
