/** What was read of a short or a break: from one end, or from both. */

import { html, live, nothing } from "../markup.js";
import { farOf, meteredZone, titleOf } from "../meter_first.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../meter_state").Far} Far */

const FAULTS = /** @type {const} */ (["short", "break"]);
const QUANTITIES = /** @type {const} */ (["dc_ohm", "z_1k_ohm"]);

/** @param {Far} far @param {string} name @param {string} unit */
const number = ({ typed, problem }, name, unit) => {
  const wrong = problem?.field === name;
  return html`<div class="field ${wrong ? "has-problem" : ""}">
    <label for=${`far-${name}`}>${sayOne("far", name)}</label>
    <input id=${`far-${name}`} class="number" type="text" inputmode="decimal" autocomplete="off" placeholder=${unit}
      .value=${live(typed[name] ?? "")} data-input="far.type" data-field=${name}
      aria-invalid=${wrong} aria-describedby=${wrong ? "why-far" : nothing} />
  </div>`;
};

/** @param {string} act @param {string} name @param {{value: string, words: string}[]} choices @param {string} now */
const pick = (act, name, choices, now) => html`<div class="meter-pick">
  <label for=${act}>${name}</label>
  <select id=${act} data-input=${act}>
    ${choices.map(({ value, words }) => html`<option value=${value} .selected=${live(value === now)}>${words}</option>`)}
  </select>
</div>`;

/** Cables of the job, then the usual ones. @param {State} state */
const cablesOf = ({ desk, catalogue }) => {
  const own = desk?.job.kinds.cables ?? [];
  const usual = (catalogue?.cables ?? []).filter(({ id }) => !own.some((one) => one.id === id));
  const choices = [...own, ...usual].map(({ id, name }) => ({ value: id, words: name }));
  return [{ value: "", words: say("far.cable_choose") }, ...choices];
};

/** At which box the second reading was taken. @param {State} state */
const boxesOf = (state) => [
  { value: "", words: say("far.box_choose") },
  ...(meteredZone(state)?.line ?? []).map(({ id }) => ({ value: id, words: titleOf(state, id) })),
];

/** @param {State} state */
export const distanceBench = (state) => {
  const far = farOf(state);
  const bare = state.place.screen !== "zone";
  const both = Boolean(far.typed.far_ohm);
  // what is wrong stands above the fields, since the bench grows upward: nothing moves under the thumb
  return html`<form class="far-form" data-act="far.ask" novalidate>
    ${far.problem ? html`<p class="field-problem" id="why-far" role="alert">${far.problem.words} ${far.problem.remedy}</p>` : nothing}
    <div class="segments" role="radiogroup" aria-label=${say("far.fault")}>
      ${FAULTS.map(
        (each) => html`<label class="segment one-of">
          <input type="radio" name="fault" data-input="far.fault" data-fault=${each}
            .checked=${live(far.fault === each)} />
          <span>${sayOne("far", each)}</span>
        </label>`,
      )}
    </div>
    <div class="far-row">${number(far, "near_ohm", "Ω")} ${number(far, "far_ohm", "Ω")}</div>
    <div class="far-row">
      ${far.fault === "short"
        ? pick("far.quantity", say("far.quantity"), QUANTITIES.map((value) => ({ value, words: sayOne("far", value) })), far.quantity)
        : nothing}
      ${bare ? pick("far.cable", say("far.cable"), cablesOf(state), far.cable) : nothing}
      ${!bare && both ? pick("far.box", say("far.box"), boxesOf(state), far.far_point) : nothing}
      ${bare && both ? number(far, "route_m", "m") : nothing}
    </div>
    <details class="far-more"><summary>${say("far.more")}</summary>
      <div class="far-row">${number(far, "leads_ohm", "Ω")} ${number(far, "conductor_c", "°C")} ${number(far, "tolerance_pct", "%")}</div>
      <p class="faded">${say("far.why")}</p>
    </details>
    <div class="form-send"><button type="submit" class="chief-button">${say("far.ask")}</button></div>
  </form>`;
};
