/**
 * Taking a copy of the engine's memory, and waking one. The runtime's own way of restoring
 * expects memory large enough and every compiled module at the place it had when the copy was
 * taken; both are seen to here, from outside, before the runtime puts the copy back.
 */

/** @typedef {{HEAP8: {length: number}, wasmTable: {length: number},
 *   _malloc(bytes: number): number}} Module */
/** @typedef {{heap: number, table: number}} Shape */

const MOST_TRIES = 16;

/** @param {ArrayBuffer | Uint8Array<ArrayBuffer>} bytes */
export const hash = async (bytes) => {
  const digest = await crypto.subtle.digest("SHA-256", bytes);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
};

/**
 * Give back the memory of bytes that are of no more use, whoever still holds on to them: the
 * runtime keeps what it was started with for as long as it lives.
 * @param {Uint8Array<ArrayBuffer>} bytes
 */
export const letGo = ({ buffer }) => {
  structuredClone(buffer, { transfer: [buffer] });
};

/** The size of the memory and of the table of functions. @param {Module} module @returns {Shape} */
export const measure = ({ HEAP8, wasmTable }) => ({ heap: HEAP8.length, table: wasmTable.length });

/**
 * What is reserved here is forgotten when the copy comes over it; only the size stays.
 * @param {Module} module @param {number} length
 */
const growTo = (module, length) => {
  for (let tries = 0; module.HEAP8.length < length; tries += 1) {
    if (tries === MOST_TRIES || !module._malloc(length - module.HEAP8.length)) {
      throw new Error("no room in memory for the copy");
    }
  }
};

/**
 * The last check before memory is overwritten.
 * @param {Module} module @param {Shape} shape the one it had when the copy was taken
 */
export const makeRoom = (module, shape) => {
  const { table } = measure(module);
  if (table !== shape.table) throw new Error(`the table has ${table} places, not ${shape.table}`);
  growTo(module, shape.heap);
};
