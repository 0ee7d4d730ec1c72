/** The meter on one line: what it should read, what it reads, what that means, and what is next. */

import { html, live, nothing } from "../markup.js";
import { complaintOf, isLoose, lineOf, loudspeakersOf, meteredZone, readingsOf } from "../meter_first.js";
import { heardTiles } from "../pieces/heard.js";
import { effortPart } from "../pieces/efforts.js";
import { instrumentPart } from "../pieces/instrument.js";
import { verdictMark } from "../pieces/mark.js";
import { bandOf } from "../pieces/reading.js";
import { earlierReadings, meterReadings } from "../pieces/meter_readings.js";
import { nextCard, suspectCards } from "../pieces/suspects.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../meter_state").Diagnosis} Diagnosis */
/** @typedef {import("../meter_state").Expected} Expected */
/** @typedef {Expected["heads"][number]} Head */

/** @param {string[]} lines */
const list = (lines) => html`<ul class="meter-list">${lines.map((each) => html`<li>${each}</li>`)}</ul>`;

/** @param {string} title @param {string[]} lines */
const folded = (title, lines) =>
  lines.length ? html`<details class="meter-part"><summary>${title}</summary>${list(lines)}</details>` : nothing;

/** A number that opens. @param {Head} head @param {string} zone @param {string} shown @param {string} looks */
const opens = ({ where, quantity, controls, title }, zone, shown, looks = "") => html`<button type="button"
  class="figure opens ${looks}" data-act="meter.explain"
  data-ask=${JSON.stringify({ zone, at: Object.values(where)[0], quantity, controls })}
  aria-label=${say("working.open", { name: title, shown })}>${shown}</button>`;

/** The largest figure: what the zone's own home run should read at 1 kHz. @param {Expected} expected @param {string} zone */
const should = ({ heads }, zone) => {
  const own = heads.find(({ where, quantity }) => where.zone && quantity === "z_1k_ohm") ?? heads[0];
  if (!own) return nothing;
  return html`<section class="meter-should">
    <p class="meter-name">${say("meter.should")}</p>
    <p class="meter-big">${opens(own, zone, own.band.shown)}</p>
    <p>${say("meter.between", { range: own.band.range })}</p>
    ${own.verdict === "over" || own.verdict === "near"
      ? html`<p>${verdictMark(own.verdict)} ${own.words}</p>`
      : nothing}
    <details><summary>${say("meter.all_should")}</summary>
      ${[...new Set(heads.map(({ how }) => how))].map(
        (how) => html`<h3 class="heads-how">${how}</h3>
          <ul class="heads">
            ${heads.filter((head) => head.how === how).map((head) => html`<li><span>${head.place}</span> ${opens(head, zone, head.band.range)}</li>`)}
          </ul>`,
      )}
    </details>
  </section>`;
};

/** What was read last, large, and where it lies. @param {Diagnosis} told */
const lastRead = ({ expected }) => {
  const last = expected.filter(({ code }) => code !== "heard").at(-1);
  if (!last) return nothing;
  return html`<p class="meter-name">${last.title}</p>
    <div class="meter-read"><p class="meter-big">${last.shown}</p>${bandOf(last, false)}</div>`;
};

/** @param {Diagnosis} told */
const verdict = (told) => {
  const { verdict: mark, headline, reason, contradictions, settled, bundles } = told;
  return html`<section class="meter-verdict">
  ${lastRead(told)}
  <h2>${verdictMark(mark, headline)}</h2>
  ${reason && reason === bundles[0]?.words && bundles.length > 1 && !settled && mark === "unknown"
    ? html`<p>${say("meter.likeliest", { words: reason })}</p>`
    : html`<p>${reason}</p>`}
  ${contradictions.map(({ words }) => html`<p class="field-problem">${words}</p>`)}
</section>`;
};

/** What a complaint usually is, and what decides. @param {import("../meter_state").Complaint} told */
const usual = ({ suspects, test, cautions }) => html`<h3>${say("meter.usual")}</h3>${list(suspects)}
  <h3>${say("meter.decides")}</h3><p>${test}</p>${list(cautions)}`;

/** @param {State} state */
const complaint = (state) => {
  const { complaints } = state.meter;
  const now = complaintOf(state);
  if (!complaints) return nothing;
  return html`<section class="meter-part">
    <div class="meter-pick">
      <label for="meter-complaint">${say("meter.complaint")}</label>
      <select id="meter-complaint" data-input="meter.complaint">
        <option value="" .selected=${live(!now)}>${say(isLoose(state) ? "wrong.no_complaint" : "meter.no_complaint")}</option>
        ${complaints.map(
          ({ code, words }) => html`<option value=${code} .selected=${live(code === now)}>${words}</option>`,
        )}
      </select>
    </div>
    ${isLoose(state) ? nothing : complained(state)}
  </section>`;
};

/** What the complaint usually is; of a bare count below its tiles, so that they stay under the thumb. @param {State} state */
const complained = (state) => {
  const told = state.meter.complaints?.find(({ code }) => code === complaintOf(state));
  if (!told) return nothing;
  const read = readingsOf(state).now.length > 0;
  return read && isLoose(state) ? html`<details><summary>${say("meter.usual")}</summary>${usual(told)}</details>` : usual(told);
};

/** The same on its own. @param {State} state */
const complainedLoose = (state) => html`<section class="meter-part">${complained(state)}</section>`;

/** What comes before the first act on a line. @param {Expected} expected */
const first = ({ cautions }) => html`<section class="meter-part cautions">${list(cautions)}</section>`;

/** The other screens of the meter. @param {State} state */
const ways = ({ place: { job, zone } }) => html`<nav class="meter-ways" aria-label=${say("meter.ways")}>
  <a class="plain-button" href=${`#/job/${job}/zone/${zone}/distance`}>${say("title.distance")}</a>
  <a class="plain-button" href=${`#/job/${job}/test`}>${say("title.test")}</a>
  <a class="plain-button" href=${`#/job/${job}/paper`}>${say("title.paper")}</a>
</nav>`;

/** By ear: the tiles, or the way to them. @param {State} state */
const ear = (state) => {
  if (!loudspeakersOf(state).length) return nothing;
  return state.meter.entry.quantity === "plays" ? heardTiles(state) : nothing;
};

/** @param {State} state */
export const meterSheet = (state) => {
  const zone = meteredZone(state);
  if (!zone) return nothing;
  if (!zone.output && !zone.page_output) return html`<p class="empty">${say("meter.not_landed")}</p>`;
  const { meter } = state;
  const line = lineOf(state);
  const expected = meter.expected?.of === line ? meter.expected.answer : null;
  const told = meter.diagnosis?.of === line ? meter.diagnosis.answer : null;
  if (!expected) return html`<p class="empty">${say("meter.waiting")}</p>`;
  const loose = isLoose(state);
  const listens = meter.entry.quantity === "plays";
  return html`<div class="meter">
    ${loose ? complaint(state) : nothing}
    ${ear(state)}
    ${loose && complaintOf(state) ? complainedLoose(state) : nothing}
    ${told ? verdict(told) : listens ? nothing : should(expected, zone.id)}
    ${told || listens || loose ? nothing : complaint(state)}
    ${told || listens ? nothing : first(expected)}
    ${told ? nextCard(told) : nothing}
    ${meterReadings(state, told, zone.id)}
    ${told ? suspectCards(state, told) : nothing}
    ${told || listens ? should(expected, zone.id) : nothing}
    ${!loose && (told || listens) ? complaint(state) : nothing}
    ${loose ? nothing : earlierReadings(state, zone.id)} ${instrumentPart(state)} ${effortPart(state)}
    ${loose ? nothing : ways(state)}
    ${folded(say("meter.cannot_see"), (told ?? expected).cannot_see)}
    ${folded(say("meter.assumed"), (told ?? expected).assumptions)}
  </div>`;
};
