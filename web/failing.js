/** Why the engine did not start, as far as what was thrown and a second look at its files can tell. */

import { BrokenOff, Missing, NotCome, nameOf } from "./fetching.js";

/** @typedef {"type" | "missing" | "network" | "memory" | "browser" | "unknown"} Cause */

// What a browser takes a script by; under any other type it refuses a module.
const SCRIPT_TYPE = /^(text|application)\/(x-)?(java|ecma)script\b/i;
const NO_ROOM = /memory|allocat/i;

/**
 * A module that holds nothing but the mark of an exception, which the runtime needs and browsers
 * learned last of all that it needs.
 */
const WITH_EXCEPTIONS = new Uint8Array([
  ...[0, 97, 115, 109, 1, 0, 0, 0], // its name and version
  ...[1, 4, 1, 96, 0, 0], // one type: nothing in, nothing out
  ...[13, 3, 1, 0, 0], // one exception of this type
]);

const isOld = () => typeof WebAssembly !== "object" || !WebAssembly.validate(WITH_EXCEPTIONS);

/**
 * A refused script does not tell why, so it is asked for once more.
 * @param {string} address
 * @returns {Promise<Cause | null>}
 */
const lookAt = async (address) => {
  try {
    const { headers } = await fetch(address);
    return SCRIPT_TYPE.test(headers.get("content-type") ?? "") ? null : "type";
  } catch (error) {
    return error instanceof Missing ? "missing" : "network";
  }
};

/**
 * The likely cause, and the file that it lies in where one is known.
 * @param {unknown} error
 * @param {string[]} scripts addresses of the runtime's scripts
 * @returns {Promise<{cause: Cause, file: string}>}
 */
export const findCause = async (error, scripts) => {
  if (isOld()) return { cause: "browser", file: "" };
  if (error instanceof Missing) return { cause: "missing", file: error.message };
  if (error instanceof BrokenOff) return { cause: "network", file: error.message };
  if (error instanceof RangeError || NO_ROOM.test(String(error))) {
    return { cause: "memory", file: "" };
  }
  for (const address of scripts) {
    const cause = await lookAt(address);
    if (cause) return { cause, file: nameOf(address) };
  }
  // So fails a script that did not come at first and is there now.
  const isOfScript = error instanceof NotCome && error.cause instanceof TypeError;
  return { cause: isOfScript ? "network" : "unknown", file: "" };
};
