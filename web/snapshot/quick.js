/**
 * A start from a copy of the started engine, where this device has one and nothing speaks
 * against it. The usual start stands behind every step: whatever fails here is noted, the copy
 * thrown away, and the engine started as if there were none.
 *
 * The hash seed of the copy is the one of the start it was taken from. The core uses no chance
 * and no clock, so nothing else of that moment lives on in it.
 */

import { NotCome } from "../fetching.js";
import { hash, letGo, makeRoom, measure } from "./memory.js";
import { askDevice, explainMark, isFull, mayMake, mayUse, noteFailed, noteSpoiled } from "./policy.js";
import { prove } from "./proof.js";
import { openShelf } from "./shelf.js";

/** @typedef {import("./proof.js").Handle} Handle */
/** @typedef {import("./memory.js").Module} Module */
/** @typedef {import("./shelf.js").Shelf} Shelf */
/** @typedef {import("./shelf.js").Label} Label */
/** @typedef {import("./shelf.js").Notes} Notes */
/** @typedef {{handle: Handle, copy(): Uint8Array<ArrayBuffer>, module: Module | null}} Engine */
/** @typedef {(how: {makes?: boolean, bytes?: Uint8Array,
 *   onModule?: (module: Module) => Promise<void>}) => Promise<Engine>} Start */
/** @typedef {"copy" | "making" | "plain" | "off"} Way */
/** @typedef {{handle: Handle, way: Way, later: (() => Promise<void>) | null,
 *   onBroken: () => Promise<void>}} Started `later` keeps the copy that was taken */

/** The bytes are not those that were kept. */
class Spoiled extends Error {}

const nothing = async () => {};
const LOCK = `rungline-engine ${new URL("./", self.location.href).pathname}`;

/**
 * One engine at a time on this device looks at the copy: a mark found by the next is then
 * never the mark of a start that still goes on.
 * @param {() => Promise<Engine | "none" | "busy">} act
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
  try {
    const engine = await start({ bytes, onModule });
    if (prove(engine.handle) !== label.proof) throw new Error("the copy answers wrongly");
    return engine;
  } finally {
    letGo(bytes);
    reading.then(letGo, () => {});
  }
};

/**
 * What a start that failed says of the copy. A file that did not come says nothing of it, and no
 * other start goes without that file either.
 * @param {Shelf} shelf @param {string} key @param {Notes} notes @param {unknown} error
 */
const blame = async (shelf, key, notes, error) => {
  if (error instanceof NotCome) {
    await shelf.changeNotes({ trying: false });
    throw error;
  }
  if (!(error instanceof Spoiled)) return throwAway(shelf, key);
  await shelf.dropCopy();
  await shelf.changeNotes(noteSpoiled(notes));
};

/**
 * Before a copy is touched a mark is set, and it is taken away when that went well or failed in
 * good order. Whoever finds it standing knows that the start took the page down with it.
 * @param {Shelf} shelf @param {string} key @param {Start} start @param {string} after
 */
const wake = async (shelf, key, start, after) => {
  const before = await shelf.readNotes();
  const notes = await shelf.changeNotes(explainMark(before, after === "left") ?? {});
  if (!mayUse(notes, key)) await shelf.dropCopy();
  if (after === "again") return "busy";
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
    await blame(shelf, key, notes, error);
    return "none";
  }
};

/** A copy in doubt goes, and none is made again for this build. @param {Shelf} shelf @param {string} key */
const throwAway = async (shelf, key) => {
  await shelf.dropCopy();
  await shelf.changeNotes(noteFailed(await shelf.readNotes(), key));
};

/**
 * Keep what was taken. Its bytes are let go whether they could be kept or not; where there was no
 * room for them, there will be none for the next copy of this build.
 * @param {Shelf} shelf @param {Omit<Label, "length" | "digest">} label @param {Uint8Array<ArrayBuffer>} bytes
 */
const keep = async (shelf, label, bytes) => {
  try {
    const digest = await hash(bytes);
    await shelf.keepCopy({ ...label, length: bytes.length, digest }, bytes);
  } catch (error) {
    if (isFull(error)) await throwAway(shelf, label.key).catch(nothing);
    throw error;
  } finally {
    letGo(bytes);
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
    const later = () => keep(shelf, { key, shape, proof }, bytes);
    return { handle, way: "making", later, onBroken: nothing };
  } catch (error) {
    console.warn("no copy could be taken:", String(error));
    if (!(error instanceof NotCome)) await throwAway(shelf, key).catch(nothing);
    return null;
  }
};

/**
 * A shelf that cannot be read or written is no reason not to start.
 * @param {Shelf} shelf @param {string} key @param {Start} start @param {boolean} makes
 * @returns {Promise<Started>}
 */
const startWithout = async (shelf, key, start, makes) => {
  const notes = await shelf.readNotes().catch(() => null);
  const may = notes && makes && mayMake(notes, key, await askDevice());
  const made = may ? await startAndCopy(shelf, key, start) : null;
  const { handle } = made ?? (await start({}));
  const starts = (notes?.starts ?? 0) + 1;
  const now = await shelf.changeNotes({ starts, leaves: 0 }).catch(() => null);
  const way = now && !mayUse(now, key) ? "off" : "plain";
  return made ?? { handle, way, later: null, onBroken: nothing };
};

/**
 * Start the engine in the quickest way this device allows.
 * @param {{start: Start, build: string, after: string}} parts
 *   `after`: "left" when the page before this one was left while its engine started, "again"
 *   when an engine had to be ended: then none is woken, whatever the cause was
 * @returns {Promise<Started>}
 */
export const startQuickly = async ({ start, build, after }) => {
  const key = `1 ${build} ${navigator.userAgent}`;
  /** @returns {Promise<Started>} */
  const startPlain = async () => {
    const { handle } = await start({});
    return { handle, way: "plain", later: null, onBroken: nothing };
  };
  const shelf = navigator.locks ? await openShelf().catch(() => null) : null;
  if (!shelf) return startPlain();
  const woken = await alone(() => wake(shelf, key, start, after)).catch(() => "busy");
  if (typeof woken === "object") {
    const onBroken = () => throwAway(shelf, key);
    return { handle: woken.handle, way: "copy", later: null, onBroken };
  }
  return startWithout(shelf, key, start, woken === "none");
};
