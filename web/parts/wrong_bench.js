/** How many loudspeakers, about, on which tap and how many volts: enough to begin. */

import { html, live, nothing } from "../markup.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */

/** @param {State} state @param {string} field @param {string} hint */
const number = ({ meter: { about } }, field, hint = "") => {
  const wrong = about.problem?.field === field;
  const value = /** @type {Record<string, any>} */ (about)[field];
  return html`<div class="field ${wrong ? "has-problem" : ""}">
    <label for=${`wrong-${field}`}>${sayOne("wrong", field)}</label>
    <input id=${`wrong-${field}`} class="number" type="text" inputmode="decimal" autocomplete="off"
      placeholder=${hint} .value=${live(value)} data-input="wrong.type" data-field=${field}
      aria-invalid=${wrong} aria-describedby=${wrong ? "why-wrong" : nothing} />
  </div>`;
};

/** @param {State} state */
const volts = ({ meter: { about }, catalogue }) => html`<fieldset class="volts wrong-volts">
  <legend>${say("wrong.line_v")}</legend>
  ${(catalogue?.line_volts ?? []).map(
    ({ shown }, place) => html`<label class="volt">
      <input id=${place ? `wrong-volts-${place}` : "wrong-line_v"} type="radio" name="wrong_v" data-input="wrong.volts" data-text=${shown}
        .checked=${live(about.line_v === shown)} />
      <span>${shown}</span>
    </label>`,
  )}
</fieldset>`;

/** @param {State} state */
export const wrongBench = (state) => {
  const { about } = state.meter;
  // above the fields, since the bench grows upward: nothing moves under the thumb
  return html`<form class="wrong-form" data-act="wrong.start" novalidate>
    ${about.problem
      ? html`<p class="field-problem" id="why-wrong" role="alert">${about.problem.words} ${about.problem.remedy}</p>`
      : nothing}
    <div class="wrong-row">${number(state, "count")} ${number(state, "tap_w", "W")}</div>
    ${volts(state)}
    <div class="wrong-row wrong-last">
      ${number(state, "amplifier_w", "W")}
      <button type="submit" class="chief-button">${say("wrong.begin")}</button>
    </div>
  </form>`;
};
