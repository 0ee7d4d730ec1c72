/** A sentence with numbers in it: touched anywhere, it opens the working of what it speaks of. */

import { html, nothing } from "../markup.js";
import { say } from "../say.js";

/**
 * @param {unknown} words @param {string | null | undefined} finding what it speaks of
 * @param {string} [look] how it looks, as a class
 */
export const sentence = (words, finding, look = "") => {
  if (!words) return nothing;
  if (!finding) return html`<p class=${look}>${words}</p>`;
  return html`<button type="button" class="sentence ${look}" data-act="working.open"
    data-finding=${finding} title=${say("working.title")}>${words}</button>`;
};
