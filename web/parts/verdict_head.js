/** The head of a job: its verdict, why, and what nobody has checked. */

import { html, nothing } from "../markup.js";
import { shape } from "../pieces/mark.js";
import { meterWay } from "../pieces/meter_way.js";
import { sentence } from "../pieces/sentence.js";
import { say } from "../say.js";

/** @param {import("../state").Desk} desk */
export const verdictHead = (desk) => {
  const { verdict, headline, reason, not_checked, counts, line, finding } = desk.seen.faces.job;
  return html`<section
  class="verdict-head v-${verdict}"
  aria-label=${say("job.verdict")}
>
  <p class="verdict-big" role="status">${shape(verdict)}<strong>${headline}</strong></p>
  ${sentence(reason, finding, "verdict-reason")} ${meterWay(desk, finding)}
  ${not_checked.length
    ? html`<p class="not-checked">${say("not_checked", { list: not_checked.join(", ") })}</p>`
    : nothing}
  <p class="quiet">${counts}${line ? html` · ${line}` : nothing}</p>
  ${finding
    ? html`<button type="button" class="plain-button to-findings" data-act="findings.show">
        ${say("findings.title")}
      </button>`
    : nothing}
</section>`;
};
