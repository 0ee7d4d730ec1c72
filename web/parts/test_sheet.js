/** A first test, one step on the screen; between zones and at the end, what was recorded. */

import { html, nothing } from "../markup.js";
import { dayOf } from "../pieces/day.js";
import { instrumentPart } from "../pieces/instrument.js";
import { verdictMark, verdictShape } from "../pieces/mark.js";
import { readingRow } from "../pieces/reading.js";
import { say } from "../say.js";
import { END, isDone, saidOf, stepOf, zoneOf } from "../test_run.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../meter_state").Run} Run */
/** @typedef {import("../test_run.js").TestedZone} TestedZone */
/** @typedef {import("../test_run.js").TestStep} TestStep */

/** What is known of a step, in a word or two. @param {Run} run @param {string} zone @param {TestStep} step */
const outcome = (run, zone, step) => {
  const said = saidOf(run, zone, step);
  if (step.record) return html`${verdictShape(step.record.verdict, step.record.mark)}<b>${step.record.shown}</b>`;
  if (said?.is === "done") return verdictMark("ok", say("test.said_done"));
  return html`<span class="faded">${say(said ? "test.said_left" : "test.not_yet")}</span>`;
};

/** @param {Run} run @param {TestedZone} tested */
const zoneRows = (run, { zone, steps }) => html`<ul class="test-rows">
  ${steps.map(
    (step) => html`<li class="test-row">
      <span>${step.title}</span>
      <span class="test-outcome">${outcome(run, zone, step)}</span>
    </li>`,
  )}
</ul>`;

/** What was read is not what it should be: nothing is connected, the cause is looked for. @param {State} state @param {TestedZone} tested */
const wrongHere = ({ desk }, { zone, steps }) =>
  steps.some(({ record }) => record?.verdict === "over")
    ? html`<p>${verdictMark("over", steps.at(-1)?.stop || say("test.not_right"))}</p>
        <p class="test-way-on"><a class="plain-button" href=${`#/job/${desk?.id}/zone/${zone}/meter`}>${say("test.to_meter")}</a></p>`
    : nothing;

/** @param {State} state @param {Run} run @param {TestedZone} tested */
const zoneCard = (state, run, tested) => {
  const { zone, title, problem, steps } = tested;
  const done = steps.filter((step) => isDone(run, zone, step)).length;
  return html`<section class="meter-part test-zone" aria-label=${title}>
    <div class="test-zone-head">
      <div>
        <h3>${title}</h3>
        ${problem
          ? nothing
          : html`<p class="faded">${say("test.done_of", { done: String(done), all: String(steps.length) })}</p>`}
      </div>
      ${problem
        ? nothing
        : html`<button type="button" class=${done ? "plain-button" : "chief-button"} data-act="test.zone" data-zone=${zone}
            aria-label=${say("test.open", { zone: title })}>
            ${say(done === steps.length ? "test.look" : done ? "test.resume" : "test.start")}</button>`}
    </div>
    ${problem
      ? html`<p>${verdictMark("unknown")} ${problem}</p>`
      : done
        ? html`${wrongHere(state, tested)}
            ${baselineWay(run, tested)}
            <details><summary>${say("test.recorded")}</summary>${zoneRows(run, tested)}</details>`
        : nothing}
  </section>`;
};

/** Its readings become its baseline once every step is done and all are in order; else why not. @param {Run} run @param {TestedZone} tested */
const baselineWay = (run, { zone, title, steps, baseline: { readings, why } }) => {
  const marked = steps.some(({ record }) => record?.is_baseline);
  const left = steps.filter((step) => !isDone(run, zone, step)).map((step) => step.title);
  if (!marked && why) return html`<p>${verdictMark("unknown", why)}</p>`;
  if (!marked && left.length) return html`<p class="faded">${say("baseline.after", { steps: left.join(", ") })}</p>`;
  if (!readings.length) return nothing;
  return html`<p class="test-way-on"><button type="button" class="plain-button" data-act="test.baseline"
    data-zone=${zone} data-baseline=${marked ? "no" : "yes"} aria-pressed=${marked}>
    ${say(marked ? "baseline.zone_off" : "baseline.zone", { zone: title })}</button></p>`;
};

/** @param {State} state @param {Run} run */
const overview = (state, run) => {
  const zones = run.answer?.zones ?? [];
  return html`<div class="meter">
    <section class="meter-part">
      <h2 id="test-title" tabindex="-1">${say("test.summary")}</h2>
      <p class="faded">${say("test.since", { day: dayOf(run.since)?.day ?? run.since })}</p>
      ${run.answer?.whole
        ? html`<p>${verdictMark("note", say("test.whole"))}</p>`
        : html`<p>${verdictMark("unknown", say("test.not_whole"))}</p>`}
    </section>
    ${zones.map((tested) => zoneCard(state, run, tested))}
    <section class="meter-part">
      <p class="faded">${say("meter.baseline_why")}</p>
      <p>${run.answer?.connect}</p>
      <p class="faded">${say("test.confirmed_here")}</p>
    </section>
  </div>`;
};

/** @param {State} state @param {Run} run @param {TestedZone} tested */
const zoneEnd = (state, run, tested) => html`<div class="meter">
  <section class="meter-part">
    <h2 id="test-title" tabindex="-1">${say("test.zone_done", { zone: tested.title })}</h2>
    ${wrongHere(state, tested)} ${zoneRows(run, tested)} ${baselineWay(run, tested)}
  </section>
</div>`;

/** @param {TestedZone} tested @param {TestStep} step */
const oneStep = ({ zone, title, steps }, step) => {
  const at = steps.indexOf(step) + 1;
  return html`<div class="meter test-step">
    <section class="meter-part">
      <p class="meter-name">${title} · ${say("test.step_of", { step: String(at), all: String(steps.length) })}</p>
      <h2 class="test-title" id="test-title" tabindex="-1">${step.title}</h2>
      <p class="test-words">${step.words}</p>
      ${step.expects && !step.record
        ? html`<p class="meter-name">${say("meter.should")}</p><p class="test-expects">${step.expects}</p>`
        : nothing}
      ${step.stop ? html`<p role="alert">${verdictMark("over", step.stop)}</p>` : nothing}
    </section>
    ${step.record
      ? html`<section class="meter-part"><ul class="readings">${readingRow(step.record, zone, { instrument: step.record.instrument })}</ul></section>`
      : nothing}
    ${step.cautions.length
      ? html`<section class="meter-part cautions"><ul class="meter-list">${step.cautions.map((each) => html`<li>${each}</li>`)}</ul></section>`
      : nothing}
  </div>`;
};

/** @param {State} state */
export const testSheet = (state) => {
  const { run } = state.meter;
  if (!run || run.job !== state.desk?.id) {
    return html`<div class="meter"><section class="meter-part"><h2>${say("title.test")}</h2><p>${say("test.what")}</p></section>
      ${instrumentPart(state, true)}
      <section class="meter-part cautions"><p>${say("test.trained")}</p></section></div>`;
  }
  if (!run.answer) return html`<p class="empty">${say("meter.waiting")}</p>`;
  const zone = zoneOf(run);
  const step = stepOf(run);
  if (!zone) return overview(state, run);
  return step && run.step !== END ? oneStep(zone, step) : zoneEnd(state, run, zone);
};
