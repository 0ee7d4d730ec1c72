/** The ways to look at one line: as a list, drawn, by its cable, and otherwise than it is. */

import { html, nothing } from "../markup.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */

const VIEWS = /** @type {const} */ (["list", "drawing", "cable", "if", "meter"]);

/** @param {State} state */
export const lineViews = ({ place: { job, zone, view = "list" } }) => html`<nav
  class="views"
  aria-label=${say("views.title")}
>
  ${VIEWS.map(
    (each) => html`<a
      class="view-way"
      href=${`#/job/${job}/zone/${zone}${each === "list" ? "" : `/${each}`}`}
      aria-current=${each === view || (each === "meter" && view === "distance") ? "page" : nothing}
      >${sayOne("view", each)}</a
    >`,
  )}
</nav>`;
