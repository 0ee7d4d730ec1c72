/** A number that can be opened: a touch shows its working. */

import { html, nothing } from "../markup.js";
import { say } from "../say.js";

/**
 * @param {string | null | undefined} shown
 * @param {string | null | undefined} finding where the number comes from
 * @param {string} [name] what the number is, for those who hear it alone
 */
export const figure = (shown, finding, name = "") => {
  if (!shown) return nothing;
  if (!finding) return html`<span class="figure">${shown}</span>`;
  return html`<button
    type="button"
    class="figure opens"
    data-act="working.open"
    data-finding=${finding}
    aria-label=${say("working.open", { name, shown })}
  >
    ${shown}
  </button>`;
};
