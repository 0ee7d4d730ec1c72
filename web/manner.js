/** How the person reads numbers: the device says it first, the person may choose otherwise. */

/** @typedef {import("./state").Manner} Manner */

/** Where lengths are in feet; the region of a language that names none is the likeliest one. */
const FEET = ["US", "LR", "MM"];

/** @returns {Manner} */
export const deviceManner = () => {
  const { locale } = new Intl.NumberFormat().resolvedOptions();
  const parts = new Intl.NumberFormat(locale).formatToParts(0.5);
  const sign = parts.find((part) => part.type === "decimal")?.value;
  const { region = "" } = new Intl.Locale(locale).maximize();
  return { length: FEET.includes(region) ? "ft" : "m", decimal: sign === "," ? "," : "." };
};

/**
 * The manner as a question carries it. The day is the page's: the core has no clock.
 * @param {Manner} manner
 */
export const withToday = (manner) => {
  const now = new Date();
  const two = (/** @type {number} */ part) => String(part).padStart(2, "0");
  const today = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return { language: "en", ...manner, today };
};
