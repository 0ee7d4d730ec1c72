/** The page's own words. They live in one table with the core's; nothing is built from pieces. */

import { words } from "./generated/words.js";

/** @typedef {keyof typeof words} Code */

const table = /** @type {Readonly<Record<string, string>>} */ (words);

/** The sign in the numbers of our own words; set with the manner, as the core's are. */
export const numerals = { decimal: "." };

/** @param {string} words */
const written = (words) =>
  numerals.decimal === "." ? words : words.replace(/(?<=\d)\.(?=\d)/g, numerals.decimal);

/**
 * The words of a code, with {names} replaced by texts.
 * @param {Code} code
 * @param {Readonly<Record<string, string>>} [values]
 * @returns {string}
 */
export const say = (code, values = {}) =>
  written(table[code] ?? code).replace(/\{(\w+)\}/g, (whole, name) =>
    Object.hasOwn(values, name) ? String(values[name]) : whole,
  );

/** A short text that keeps on one line, such as a number with its unit. @param {string} text */
export const together = (text) => text.replaceAll(" ", "\u00a0");

/** The same as a keyboard types it. @param {string} text */
export const apart = (text) => text.replaceAll("\u00a0", " ");

/**
 * The words of a code that is put together from a family and a member, such as "verdict." + "ok".
 * @param {string} family
 * @param {string} member
 * @returns {string}
 */
export const sayOne = (family, member) => written(table[`${family}.${member}`] ?? member);
