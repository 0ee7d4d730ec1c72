/** What was read on this line: each reading in its band, with its verdict. */

import { html, nothing } from "../markup.js";
import { readingsOf } from "../meter_first.js";
import { band } from "./band.js";
import { squareButton } from "./button.js";
import { verdictShape } from "./mark.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../meter_state").Diagnosis} Diagnosis */

/** @param {Diagnosis["expected"][number]} judged */
const picture = ({ band: should, position, shown, verdict }) =>
  should && position !== null
    ? band(position, verdict, say("meter.band", { shown, range: should.range }))
    : nothing;

/** @param {Diagnosis["expected"][number]} judged */
const row = (judged) => html`<li class="reading">
  <div class="reading-head">
    ${verdictShape(judged.verdict)}
    <div><p class="reading-title">${judged.title}</p><p class="reading-shown">${judged.shown}</p></div>
    ${squareButton("remove", say("meter.drop"), "meter.drop", { reading: judged.reading })}
  </div>
  ${picture(judged)}
  <p>${judged.words}${judged.remedy ? html` <span class="remedy">${judged.remedy}</span>` : nothing}</p>
  ${judged.notes.map((note) => html`<p class="faded">${note}</p>`)}
</li>`;

/** @param {State} state @param {Diagnosis | null} told */
export const meterReadings = (state, told) => {
  const { now, earlier } = readingsOf(state);
  const known = now.length > 0 && now.every((reading) => reading.baseline);
  return html`<section class="meter-part" aria-labelledby="meter-readings">
    <h2 id="meter-readings">${say("meter.readings")}</h2>
    ${now.length ? nothing : html`<p class="faded">${say("meter.none")}</p>`}
    <ul class="readings">
      ${(told?.expected ?? []).map(row)}
    </ul>
    ${now.length
      ? html`<button type="button" class="plain-button" data-act="meter.baseline" aria-pressed=${known}>
            ${say("meter.make_baseline")}
          </button>
          <p class="faded">${say("meter.baseline_why")}</p>`
      : nothing}
    ${earlier.length
      ? html`<details><summary>${say("meter.earlier")}</summary>
          <ul class="readings">${earlier.map(({ at, quantity, id }) => html`<li>${at} · ${quantity} · ${id}</li>`)}</ul>
        </details>`
      : nothing}
  </section>`;
};
