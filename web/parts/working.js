/** The working behind a number: each step's formula, the numbers put in, and where they came from. */

import { html, nothing } from "../markup.js";
import { squareButton } from "../pieces/button.js";
import { say } from "../say.js";

/** @typedef {import("../state").Working} Working */
/** @typedef {import("../state").WorkingStep} WorkingStep */

/** @param {WorkingStep} step */
const stepPart = ({ title, formula, put_in, result, inputs, source, source_note }) => html`<li class="step">
  <h3>${title}</h3>
  <p class="step-formula">${formula}</p>
  <p class="step-put-in">${put_in} = <b>${result}</b></p>
  ${inputs.length
    ? html`<dl class="step-inputs">
        ${inputs.map(
          (input) => html`<div>
            <dt>${input.name}</dt>
            <dd><b>${input.shown}</b> <span class="quiet">${input.origin}${input.source ? html` · ${input.source}` : nothing}</span></dd>
          </div>`,
        )}
      </dl>`
    : nothing}
  ${source ? html`<p class="step-source">${source}${source_note ? html` · ${source_note}` : nothing}</p>` : nothing}
</li>`;

/** @param {Working} working */
const whole = ({ result, steps, assumptions }) => html`<p class="working-result">${result}</p>
  <ol class="steps">
    ${steps.map(stepPart)}
  </ol>
  ${assumptions.length
    ? html`<h3>${say("working.assumptions")}</h3>
        <ul class="assumptions">
          ${assumptions.map((words) => html`<li>${words}</li>`)}
        </ul>`
    : nothing}`;

/** @param {{answer: Working | null, failed: string | null}} bench */
export const workingPart = ({ answer, failed }) => html`<section class="working" aria-labelledby="working-title">
  <div class="bench-head">
    <h2 id="working-title" tabindex="-1">${answer?.title ?? say("working.title")}</h2>
    ${squareButton("close", say("working.close"), "bench.close")}
  </div>
  ${answer ? whole(answer) : html`<p class="quiet" role="status">${failed ?? say("working.asked")}</p>`}
</section>`;
