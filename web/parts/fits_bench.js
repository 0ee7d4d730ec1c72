/** What still fits, tap by tap: opened from its one line above the taps. */

import { html } from "../markup.js";
import { squareButton } from "../pieces/button.js";
import { sentence } from "../pieces/sentence.js";
import { say } from "../say.js";

/** @param {import("../state").State} state */
export const fitsBench = ({ tally }) => html`<section class="all-fits" aria-labelledby="fits-title">
  <div class="bench-head">
    <h2 id="fits-title" tabindex="-1">${say("tally.fits")}</h2>
    ${squareButton("close", say("bench.close"), "bench.close")}
  </div>
  <p class="quiet">${say("tally.fits_how")}</p>
  <ul>
    ${(tally.answer?.summary?.fits ?? []).map(({ words, finding }) => html`<li>${sentence(words, finding)}</li>`)}
  </ul>
</section>`;
