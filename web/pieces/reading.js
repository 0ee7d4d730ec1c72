/** One reading as a row: what it shows, where it lies in its band, what that means. */

import { html, nothing } from "../markup.js";
import { say } from "../say.js";
import { band } from "./band.js";
import { verdictShape } from "./mark.js";

/** @typedef {import("../meter_state").Diagnosis["expected"][number]} Judged */

/**
 * The band as a picture, with the reading in it.
 * @param {Judged} judged @param {boolean} [ends] whether its ends are printed under it
 */
export const bandOf = ({ band: should, position, shown, verdict }, ends = true) =>
  should && position !== null
    ? band(
        position,
        verdict,
        say("meter.band", { shown, range: should.range }),
        ends ? { low: should.low_shown, high: should.high_shown } : undefined,
      )
    : nothing;

/** What it should read; a touch shows how that came to be. @param {Judged} judged @param {string} zone */
export const shouldRead = ({ band: should, reading, title, deviation }, zone) =>
  should
    ? html`<p class="reading-should">${deviation ? html`<span class="deviation">${deviation}</span>` : nothing}
        ${say("meter.should")}
        <button type="button" class="figure opens" data-act="meter.explain"
          data-ask=${JSON.stringify({ zone, reading })}
          aria-label=${say("working.open", { name: title, shown: should.range })}>${should.range}</button>
      </p>`
    : nothing;

/** What it was measured with, where that was said. @param {string | undefined} instrument */
const withWhat = (instrument) =>
  instrument ? html`<p class="faded">${say("record.with", { instrument })}</p>` : nothing;

/**
 * @param {Judged} judged @param {string} zone
 * @param {{title?: unknown, side?: unknown, instrument?: string}} [more] in place of its title,
 *   beside it, and what it was measured with
 */
export const readingRow = (judged, zone, { title = judged.title, side = nothing, instrument } = {}) => html`<li class="reading">
  <div class="reading-head">
    ${verdictShape(judged.verdict, judged.mark)}
    <div><p class="reading-title">${title}</p><p class="reading-shown">${judged.shown}</p></div>
    ${side}
  </div>
  ${bandOf(judged)}
  <p class="reading-says">${judged.words}${judged.remedy ? html` <span class="remedy">${judged.remedy}</span>` : nothing}</p>
  ${shouldRead(judged, zone)} ${withWhat(instrument)}
  ${judged.notes.map((note) => html`<p class="faded">${note}</p>`)}
</li>`;
