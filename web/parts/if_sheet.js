/** What if: one thing otherwise, and every judged number before and after, side by side. */

import { html, nothing } from "../markup.js";
import { figure } from "../pieces/figure.js";
import { verdictShape } from "../pieces/mark.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../line_state").WhatIf} WhatIf */

const KINDS = /** @type {const} */ (["voltage", "tap", "more"]);

/** @param {WhatIf["is"]} now */
const kinds = (now) => html`<div class="segments" role="group" aria-label=${say("if.title")}>
  ${KINDS.map(
    (each) => html`<button type="button" class="segment" data-act="if.is" data-is=${each}
      aria-pressed=${each === now}>${sayOne("if", each)}</button>`,
  )}
</div>`;

/**
 * @param {string} act @param {{value: string, words: string}[]} choices
 * @param {string} now @param {string} words
 */
const chips = (act, choices, now, words) => html`<div class="taps" role="group" aria-label=${words}>
  ${choices.map(
    (each) => html`<button type="button" class="chip" data-act=${act} data-value=${each.value}
      aria-pressed=${each.value === now}>${each.words}</button>`,
  )}
</div>`;

/** @param {State} state */
const outputOf = ({ desk, place }) => {
  const zone = desk?.job.zones.find(({ id }) => id === place.zone);
  const outputs = desk?.job.amplifiers.flatMap((amplifier) => amplifier.outputs) ?? [];
  return outputs.find(({ id }) => id === (zone?.page_output ?? zone?.output));
};

/** @param {State} state */
const volts = (state) => {
  const now = outputOf(state)?.line_v;
  const listed = state.catalogue.line_volts.filter(({ line_v }) => line_v !== now);
  const choices = listed.map(({ line_v, shown }) => ({ value: `${line_v}`, words: shown }));
  return chips("if.volts", choices, state.line.what_if.line_v, say("tally.line_v"));
};

/** @param {State} state */
const taps = (state) => {
  const now = outputOf(state)?.line_v;
  const row = state.catalogue.usual_taps.find(({ line_v }) => line_v === now)?.taps ?? [];
  const choices = row.map(({ tap_w, shown }) => ({ value: `${tap_w}`, words: shown }));
  return chips("if.tap", choices, state.line.what_if.tap, say("tally.taps"));
};

/** @param {State} state */
const question = (state) => {
  const { is, run, problem } = state.line.what_if;
  if (is === "voltage") return volts(state);
  if (is === "tap") return taps(state);
  return html`<form class="if-run" data-act="if.ask" novalidate>
      <div class="field ${problem ? "has-problem" : ""}">
        <label for="if-run">${say("if.run")}</label>
        <div class="field-line">
          <input id="if-run" class="number" type="text" inputmode="decimal" autocomplete="off"
            .value=${run} data-input="if.run" aria-describedby=${problem ? "if-why" : nothing} />
          <button type="button" class="square times" data-act="if.times" aria-label=${say("field.times")}>×</button>
        </div>
      </div>
      ${taps(state)}
    </form>`;
};

/** @param {WhatIf["answer"]} answer @param {WhatIf["asked"]} asked */
const result = (answer, asked) => {
  if (!answer) return nothing;
  const { title, caution, rows, same } = answer;
  return html`<section class="compared" aria-labelledby="compared-title">
    <h2 id="compared-title">${title}</h2>
    ${caution ? html`<p class="caution">${caution}</p>` : nothing}
    ${same ? html`<p>${same}</p>` : nothing}
    ${rows.length
      ? html`<table>
          <thead>
            <tr><th scope="col">${say("if.what")}</th><th scope="col">${say("if.before")}</th><th scope="col">${say("if.after")}</th></tr>
          </thead>
          <tbody>
            ${rows.map(
              (row) => html`<tr>
                <th scope="row">${row.title}</th>
                <td>${figure(row.before, row.finding_before, row.title)} ${row.verdict_before === "note" ? nothing : verdictShape(row.verdict_before)}</td>
                <td><b>${figure(row.after, row.finding_after, row.title, asked)}</b> ${row.verdict_after === "note" ? nothing : verdictShape(row.verdict_after)}</td>
              </tr>`,
            )}
          </tbody>
        </table>`
      : nothing}
  </section>`;
};

/** @param {State} state */
export const ifSheet = (state) => {
  const { is, answer, asked, of, problem } = state.line.what_if;
  return html`<section class="what-if" aria-label=${say("if.title")}>
    ${kinds(is)}
    <p class="quiet">${sayOne("if", `${is}_hint`)}</p>
    ${outputOf(state) ? question(state) : html`<p>${say("if.no_output")}</p>`}
    ${problem
      ? html`<p class="field-problem" id="if-why" role="alert">${problem.words} ${problem.remedy ?? nothing}</p>`
      : nothing}
    ${result(of === state.place.zone ? answer : null, asked)}
  </section>`;
};
