/** A sentence with numbers in it: touched anywhere, it opens the working of what it speaks of. */

import { html, nothing } from "../markup.js";
import { say } from "../say.js";

/**
 * @param {unknown} words @param {string | null | undefined} finding what it speaks of
 * @param {string} [look] how it looks, as a class
 * @param {import("./figure.js").Would | null} [would] for what is not yet
 */
export const sentence = (words, finding, look = "", would = null) => {
  if (!words) return nothing;
  if (!finding) return html`<p class=${look}>${words}</p>`;
  return html`<button type="button" class="sentence ${look}" data-act="working.open"
    data-finding=${finding} data-would=${would ? JSON.stringify(would) : nothing}
    title=${say("working.title")}>${words}</button>`;
};

/**
 * The same with its remedy, which speaks of the same numbers.
 * @param {string} words @param {string | null | undefined} remedy
 * @param {string | null | undefined} finding @param {string} [look] how the remedy looks
 */
export const withRemedy = (words, remedy, finding, look = "remedy") =>
  sentence(remedy ? html`${words} <span class=${look}>${remedy}</span>` : words, finding);

/**
 * Why a place has its verdict, its shape in front.
 * @param {unknown} shape @param {string | undefined} words @param {string | null | undefined} finding
 * @param {string} look
 */
export const reason = (shape, words, finding, look) =>
  words ? html`<div class=${look}>${shape}${sentence(words, finding)}</div>` : nothing;
