/** What if: one thing otherwise, and every judged number before and after, side by side. */

import { kindFace, ownKinds, stockKinds } from "../kinds.js";
import { html, live, nothing } from "../markup.js";
import { figure } from "../pieces/figure.js";
import { verdictShape } from "../pieces/mark.js";
import { say, sayOne } from "../say.js";
import { answerIn } from "../supposed.js";
import { tapsOf } from "../taps.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../line_state").WhatIf} WhatIf */

const KINDS = /** @type {const} */ (["voltage", "cable", "tap", "more"]);

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
const zoneOf = ({ desk, place }) => desk?.job.zones.find(({ id }) => id === place.zone);

/** @param {State} state */
const outputOf = (state) => {
  const { desk } = state;
  const zone = zoneOf(state);
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

/** The taps some loudspeaker of the zone can be turned to; of an empty one the usual. @param {State} state */
const taps = (state) => {
  const now = outputOf(state)?.line_v;
  const zone = zoneOf(state);
  const hanging = (zone?.line ?? []).filter(({ fitted }) => fitted.is === "loudspeaker");
  const usual = state.catalogue.usual_taps.find(({ line_v }) => line_v === now)?.taps ?? [];
  const offered = hanging.flatMap(({ fitted }) =>
    zone ? tapsOf(state, zone, { ...fitted, tap_at_v: now ?? null }) : [],
  );
  const row = new Map((hanging.length ? offered : usual).map(({ tap_w, shown }) => [tap_w, shown]));
  const choices = [...row]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([tap_w, words]) => ({ value: `${tap_w}`, words }));
  return chips("if.tap", choices, state.line.what_if.tap, say("tally.taps"));
};

/**
 * @param {State} state @param {string} words @param {readonly import("../state").Kind[]} kinds
 */
const cableGroup = (state, words, kinds) =>
  kinds.length
    ? html`<optgroup label=${words}>
        ${kinds.map(
          ({ id, name }) => html`<option value=${id} .selected=${live(id === state.line.what_if.cable)}>
            ${kindFace(state, "cables", id)?.title ?? name}
          </option>`,
        )}
      </optgroup>`
    : nothing;

/** The cables of the job and of the catalogue, and which sections are meant. @param {State} state */
const cables = (state) => {
  const { cable, sections } = state.line.what_if;
  const stock = stockKinds(state, "cables");
  const gauge = stock.filter((kind) => "awg" in kind && kind.awg);
  const metric = stock.filter((kind) => !gauge.includes(kind));
  const groups = [
    cableGroup(state, say("cable.stock_metric"), metric),
    cableGroup(state, say("cable.stock_gauge"), gauge),
  ];
  return html`<div class="field">
      <label for="if-cable">${say("field.cable")}</label>
      <select id="if-cable" data-input="if.cable">
        <option value="" .selected=${live(!cable)}>${say("if.choose")}</option>
        ${cableGroup(state, say("if.of_job"), ownKinds(state, "cables"))}
        ${state.manner.length === "ft" ? groups.reverse() : groups}
      </select>
    </div>
    <div class="segments" role="group" aria-label=${say("if.sections")}>
      ${/** @type {const} */ (["all", "home_run"]).map(
        (each) => html`<button type="button" class="segment" data-act="if.sections" data-value=${each}
          aria-pressed=${each === sections}>${sayOne("if", each)}</button>`,
      )}
    </div>`;
};

/** @param {State} state */
const question = (state) => {
  const { is, run, problem } = state.line.what_if;
  if (is === "voltage") return volts(state);
  if (is === "cable") return cables(state);
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

/** @param {ReturnType<typeof answerIn>} shown */
const result = (shown) => {
  if (!shown) return nothing;
  const { answer, asked, late } = shown;
  const { title, caution, left, rows, same } = answer;
  return html`<section class="compared ${late ? "late" : ""}" aria-labelledby="compared-title">
    <h2 id="compared-title">${title}</h2>
    ${caution ? html`<p class="caution">${caution}</p>` : nothing}
    ${left ? html`<p class="if-left">${left}</p>` : nothing}
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
                <td data-head=${say("if.before")}>${figure(row.before, row.finding_before, row.title)} ${row.verdict_before === "note" ? nothing : verdictShape(row.verdict_before)}</td>
                <td data-head=${say("if.after")}><b>${figure(row.after, row.finding_after, row.title, asked)}</b> ${row.verdict_after === "note" ? nothing : verdictShape(row.verdict_after)}</td>
              </tr>`,
            )}
          </tbody>
        </table>`
      : nothing}
  </section>`;
};

/** @param {State} state */
export const ifSheet = (state) => {
  const { is, problem } = state.line.what_if;
  return html`<section class="what-if" aria-label=${say("if.title")}>
    ${kinds(is)}
    <p class="quiet">${sayOne("if", `${is}_hint`)}</p>
    ${outputOf(state) ? question(state) : html`<p>${say("if.no_output")}</p>`}
    ${problem
      ? html`<p class="field-problem" id="if-why" role="alert">${problem.words} ${problem.remedy ?? nothing}</p>`
      : nothing}
    ${problem ? nothing : result(answerIn(state))}
  </section>`;
};
