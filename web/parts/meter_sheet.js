/** The meter on one line: what it should read, what it reads, what that means, and what is next. */

import { html, live, nothing } from "../markup.js";
import { meteredZone } from "../meter_first.js";
import { verdictMark } from "../pieces/mark.js";
import { say } from "../say.js";
import { meterReadings } from "../pieces/meter_readings.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../meter_state").Diagnosis} Diagnosis */
/** @typedef {import("../meter_state").Expected} Expected */

/** @param {string[]} lines */
const list = (lines) => html`<ul class="meter-list">${lines.map((each) => html`<li>${each}</li>`)}</ul>`;

/** @param {string} title @param {string[]} lines */
const folded = (title, lines) =>
  lines.length ? html`<details class="meter-part"><summary>${title}</summary>${list(lines)}</details>` : nothing;

/** The largest figure: what the zone's own home run should read at 1 kHz. @param {Expected} expected */
const should = ({ heads }) => {
  const own = heads.find(({ where, quantity }) => where.zone && quantity === "z_1k_ohm") ?? heads[0];
  if (!own) return nothing;
  return html`<section class="meter-should">
    <p class="meter-name">${say("meter.should")}</p>
    <p class="meter-big">${own.band.shown}</p>
    <p>${say("meter.between", { range: own.band.range })}</p>
    ${own.verdict === "over" || own.verdict === "near"
      ? html`<p>${verdictMark(own.verdict)} ${own.words}</p>`
      : nothing}
    <details><summary>${say("meter.all_should")}</summary>
      ${list(heads.map(({ title, words, band }) => `${title}. ${words} (${band.range})`))}
    </details>
  </section>`;
};

/** @param {Diagnosis} told */
const verdict = ({ verdict: mark, headline, reason, contradictions, settled, groups }) => html`<section
  class="meter-verdict" role="status"
>
  <h2>${verdictMark(mark, headline)}</h2>
  ${reason && groups.length > 1 && !settled && mark === "unknown"
    ? html`<p>${say("meter.likeliest", { words: reason })}</p>`
    : html`<p>${reason}</p>`}
  ${contradictions.map(({ words }) => html`<p class="field-problem">${words}</p>`)}
</section>`;

/** @param {Diagnosis["next"]} next @param {string} reason */
const nextStep = (next, reason) => {
  if (!next) return reason ? html`<section class="meter-part"><p>${reason}</p></section>` : nothing;
  const { where, looking, lifted, quantity, controls } = next;
  const proposal = JSON.stringify({ where, looking, lifted, quantity, controls });
  return html`<section class="meter-part meter-next">
    <h2>${say("meter.next")}</h2>
    <p class="meter-next-words">${next.words}</p>
    <button type="button" class="chief-button" data-act="meter.take" data-proposal=${proposal}>
      ${say("meter.take")}
    </button>
    ${list(next.cautions)}
    <details><summary>${say("meter.would_mean")}</summary>
      <dl class="outcomes">
        ${next.outcomes.map(
          ({ shown, rank, suspects, more }) => html`<dt>${shown} <span class="faded">${rank}</span></dt>
            <dd>${suspects.join(", ")}${more ? html` ${say("meter.more", { n: `${more}` })}` : nothing}</dd>`,
        )}
      </dl>
    </details>
  </section>`;
};

/** @param {State} state @param {Diagnosis["groups"][number]} group */
const card = ({ place }, { rank, suspects }) => html`<li class="suspect">
  <p class="suspect-rank">${rank}</p>
  ${suspects.map(
    ({ words, distance, where }) => html`<p>
      ${words} ${distance ? html`<b>${distance.words}</b>` : nothing}
      ${where.point
        ? html`<a href=${`#/job/${place.job}/zone/${place.zone}/drawing`}>${say("view.drawing")}</a>`
        : nothing}
    </p>`,
  )}
</li>`;

/** @param {State} state @param {Diagnosis} told */
const suspected = (state, { groups, odds }) =>
  groups.length
    ? html`<section class="meter-part">
        <h2>${say("meter.suspects")}</h2>
        <p class="faded">${odds}</p>
        <ol class="suspects">${groups.map((group) => card(state, group))}</ol>
      </section>`
    : nothing;

/** @param {State["meter"]} meter */
const complaint = ({ complaints, complaint: now }) => {
  if (!complaints) return nothing;
  const told = complaints.find(({ code }) => code === now);
  return html`<section class="meter-part">
    <div class="meter-pick">
      <label for="meter-complaint">${say("meter.complaint")}</label>
      <select id="meter-complaint" data-input="meter.complaint">
        <option value="" .selected=${live(!now)}>${say("meter.no_complaint")}</option>
        ${complaints.map(
          ({ code, words }) => html`<option value=${code} .selected=${live(code === now)}>${words}</option>`,
        )}
      </select>
    </div>
    ${told
      ? html`<h3>${say("meter.usual")}</h3>${list(told.suspects)}
          <h3>${say("meter.decides")}</h3><p>${told.test}</p>${list(told.cautions)}`
      : nothing}
  </section>`;
};

/** What comes before the first act on a line. @param {Expected} expected */
const first = ({ steps: [step] }) =>
  step?.cautions.length ? html`<section class="meter-part">${list(step.cautions)}</section>` : nothing;

/** @param {Expected} expected */
const steps = ({ steps: all }) => html`<details class="meter-part">
  <summary>${say("meter.steps")}</summary>
  <ol class="meter-steps">
    ${all.map(
      ({ words, cautions, reading, where }) => html`<li>
        <p>${words}</p>
        ${cautions.length ? list(cautions) : nothing}
        ${reading
          ? html`<button type="button" class="plain-button" data-act="meter.take"
              data-proposal=${JSON.stringify({ where, ...reading })}>${say("meter.step_take")}</button>`
          : nothing}
      </li>`,
    )}
  </ol>
</details>`;

/** @param {State} state */
export const meterSheet = (state) => {
  const zone = meteredZone(state);
  if (!zone) return nothing;
  if (!zone.output && !zone.page_output) return html`<p class="empty">${say("meter.not_landed")}</p>`;
  const { meter } = state;
  const expected = meter.expected?.of === zone.id ? meter.expected.answer : null;
  const told = meter.diagnosis?.of === zone.id ? meter.diagnosis.answer : null;
  if (!expected) return html`<p class="empty">${say("meter.waiting")}</p>`;
  return html`<div class="meter">
    ${told ? verdict(told) : html`${should(expected)} ${first(expected)}`}
    ${meterReadings(state, told)}
    ${told
      ? html`${nextStep(told.next, told.next_reason)} ${suspected(state, told)} ${should(expected)}`
      : nothing}
    ${complaint(meter)} ${steps(expected)}
    ${folded(say("meter.cannot_see"), (told ?? expected).cannot_see)}
    ${folded(say("meter.assumed"), (told ?? expected).assumptions)}
  </div>`;
};
