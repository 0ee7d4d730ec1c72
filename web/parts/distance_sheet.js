/** How far it is to a short or a break: the result on the line, with its error and its working. */

import { html, nothing } from "../markup.js";
import { farOf, sketchOf } from "../meter_first.js";
import { strip } from "../pieces/strip.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {NonNullable<State["meter"]["far"]["answer"]>} Measured */

/** @param {Measured} answer */
const marksOf = ({ places }) =>
  places.map(({ point, share, low_share: from, high_share: to }) => ({ point, share, from, to }));

/** @param {State} state @param {Measured} answer */
const result = (state, answer) => {
  const words = answer.places.map((one) => one.words);
  const several = answer.places.length > 1;
  return html`<section class="meter-part" aria-labelledby="far-title">
    <h2 id="far-title">${say(several ? "far.places" : "far.place")}</h2>
    <p class="meter-big">
      ${answer.steps.length
        ? html`<button type="button" class="figure opens" data-act="far.working"
            aria-label=${say("working.open", { name: say("title.distance"), shown: answer.shown })}>${several ? answer.places.map(({ shown }) => shown).join(" · ") : answer.shown}</button>`
        : answer.shown}
    </p>
    ${words.map((each) => html`<p>${each}</p>`)}
    ${answer.own_shown ? html`<p>${say("far.own", { own: answer.own_shown })}</p>` : nothing}
    ${state.place.screen === "zone"
      ? strip(sketchOf(state), marksOf(answer), say("strip.words", { words: words.join(" ") }))
      : nothing}
    <ul class="meter-list faded">${answer.assumptions.map((each) => html`<li>${each}</li>`)}</ul>
  </section>`;
};

/** What is to be measured. @param {boolean} bare @param {boolean} short */
const howTo = (bare, short) =>
  bare ? say(short ? "far.how_bare" : "far.how_bare_break") : say(short ? "far.how_short" : "far.how_break");

/** @param {State} state */
export const distanceSheet = (state) => {
  const far = farOf(state);
  const bare = state.place.screen !== "zone";
  const { answer } = far;
  return html`<div class="meter">
    ${answer
      ? result(state, answer)
      : html`<section class="meter-part"><h2>${say("title.distance")}</h2>
          <p>${howTo(bare, far.fault === "short")}</p></section>
          <section class="meter-part cautions"><p>${say("far.cautions")}</p></section>`}
  </div>`;
};
