/** Something is wrong with a line: where to begin, with a bare count or a line that is drawn. */

import { html, nothing } from "../markup.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */

/** The lines of the job one was at last. @param {NonNullable<State["desk"]>} desk */
const drawnLines = ({ id, job }) =>
  job.zones.length
    ? html`<section class="meter-part">
        <h2>${say("wrong.drawn", { job: job.name })}</h2>
        <ul class="wires">
          ${job.zones.map(
            (zone) => html`<li class="wired"><a class="card-way" href=${`#/job/${id}/zone/${zone.id}/meter`}><b>${zone.name}</b></a></li>`,
          )}
        </ul>
      </section>`
    : nothing;

/** @param {State} state */
const begin = ({ desk, jobs }) => html`<div class="meter">
  <section class="meter-part">
    <h2>${say("wrong.title")}</h2>
    <p>${say("wrong.how")}</p>
  </section>
  ${desk ? drawnLines(desk) : nothing}
  ${!desk && jobs?.length
    ? html`<section class="meter-part"><a class="plain-button" href="#/jobs">${say("wrong.jobs")}</a></section>`
    : nothing}
  <section class="meter-part">
    <p class="faded">${say("wrong.cable")}</p>
    <a class="plain-button" href="#/distance">${say("title.distance")}</a>
  </section>
  <section class="meter-part cautions"><p>${say("wrong.cautions")}</p></section>
</div>`;

/** What is measured, and the ways on from it. @param {State} state @param {unknown} meter */
const measuring = ({ meter: { about } }, meter) => html`<div class="wrong-head">
    <p><b>${say("wrong.about", { count: about.count, tap: about.tap_w, volts: about.line_v })}</b></p>
    <button type="button" class="plain-button" data-act="wrong.change">${say("wrong.change")}</button>
  </div>
  ${meter}
  <div class="meter-ways">
    <button type="button" class="plain-button" data-act="wrong.keep">${say("wrong.keep")}</button>
    <button type="button" class="plain-button" data-act="wrong.clear">${say("wrong.clear")}</button>
  </div>`;

/** @param {State} state @param {(state: State) => unknown} meter the meter on that line */
export const wrongSheet = (state, meter) =>
  state.meter.about.on ? measuring(state, meter(state)) : begin(state);
