/** A field for watts of the tally, and what is wrong with what stands in it. */

import { html, live, nothing } from "../markup.js";

/** @typedef {import("../state").Tally} Tally */

/** @param {Tally} tally @param {string} field */
export const problemAt = ({ answer }, field) =>
  answer?.problems?.find(({ where }) => where.field === field)?.words;

/** @param {{field: string, words: string, value: string, problem: string | undefined, index?: string}} of */
export const wattsField = ({ field, words, value, problem, index = "" }) => html`<div
  class="watts ${problem ? "has-problem" : ""}"
>
  <label for="tally-${field}${index}">${words}</label>
  <input id="tally-${field}${index}" type="text" inputmode="decimal" class="number" autocomplete="off"
    placeholder="W" .value=${live(value)} data-input=${index ? "tally.output_max" : "tally.field"}
    data-field=${field} data-index=${index}
    aria-invalid=${Boolean(problem)} aria-describedby=${problem ? `why-${field}${index}` : nothing} />
  ${problem
    ? html`<p class="field-problem" id="why-${field}${index}" role="alert">${problem}</p>`
    : nothing}
</div>`;
