/** A number that can be opened: a touch shows its working. */

/** What a number would be after: commands nobody has given yet, or one thing otherwise.
 * @typedef {{commands?: object[], change?: object, typed?: Record<string, string>}} Would */

import { html, nothing } from "../markup.js";
import { say } from "../say.js";

/**
 * @param {string | null | undefined} shown
 * @param {string | null | undefined} finding where the number comes from
 * @param {string} [name] what the number is, for those who hear it alone
 * @param {Would | null} [would] for a number that is not yet
 */
export const figure = (shown, finding, name = "", would = null) => {
  if (!shown) return nothing;
  if (!finding) return html`<span class="figure">${shown}</span>`;
  return html`<button
    type="button"
    class="figure opens"
    data-act="working.open"
    data-finding=${finding}
    data-would=${would ? JSON.stringify(would) : nothing}
    aria-label=${say("working.open", { name, shown })}
  >
    ${shown}
  </button>`;
};
