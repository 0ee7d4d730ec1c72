/** One field of a form, its problem beside it. Numbers are typed as text and read by the core. */

import { html, live, nothing } from "../markup.js";
import { glyph } from "./glyphs.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").Field} Field */
/** @typedef {import("../state").Form} Form */

const OWN = { loudspeakers: "own_loudspeaker", cables: "own_cable", attenuators: "own_attenuator" };

/** @param {Form} form @param {Field} field */
const problemOf = ({ problem }, { name, at }) => {
  // Of several points that are added alike, the first stands for all.
  const place = problem?.field?.replace(/^points\.\d+\./, "points.0.");
  return problem && place && (place === name || place === at) ? problem : null;
};

/** What its kind says, where the field is left empty. @param {Form} form @param {Field} field */
const byKind = ({ values }, { by_kind }) => by_kind?.[values.kind ?? ""] ?? "";

/** @param {string} id @param {string} value @param {Field} field @param {string | symbol} described @param {string} empty what holds while it is empty */
const control = (id, value, field, described, empty) => {
  if (field.is === "choice") {
    return html`<select id=${id} data-input="form.type" data-field=${field.name}
      aria-describedby=${described}>
      ${(field.choices ?? []).map(
        (choice) =>
          html`<option value=${choice.value} .selected=${live(choice.value === value)}>${!choice.value && empty ? say("field.by_kind", { value: empty }) : choice.words}</option>`,
      )}
    </select>`;
  }
  if (field.is === "long") {
    return html`<textarea id=${id} rows="3" .value=${live(value)} data-input="form.type"
      data-field=${field.name}></textarea>`;
  }
  const number = field.is === "number";
  return html`<input id=${id} type="text" inputmode=${number ? "decimal" : "text"}
    class=${number ? "number" : ""} autocomplete="off" autocapitalize="off" spellcheck="false"
    .value=${live(value)} data-input="form.type" data-field=${field.name}
    aria-describedby=${described} aria-invalid=${String(described).startsWith("why-")} />`;
};

/** @param {Form} form @param {Field} field */
const flags = (form, field) => {
  const ticked = (form.values[field.name] ?? "").split(" ");
  return html`<fieldset class="field flags">
    <legend>${field.words}</legend>
    ${(field.choices ?? []).map(
      ({ value, words }) => html`<label class="flag">
        <input type="checkbox" data-input="form.flag" data-field=${field.name} data-value=${value}
          .checked=${live(ticked.includes(value))} />
        <span>${words}</span>
      </label>`,
    )}
    ${problemLine(form, field)}
  </fieldset>`;
};

/** @param {Form} form @param {Field} field */
const problemLine = (form, field) => {
  const problem = problemOf(form, field);
  if (!problem) return nothing;
  return html`<p class="field-problem" id="why-${field.name}" role="alert">
    ${problem.words}${problem.remedy ? html` <span>${problem.remedy}</span>` : nothing}
  </p>`;
};

/** Whether a problem is about one of these fields. @param {Form} form @param {Field[]} fields */
export const hasProblem = (form, fields) => fields.some((field) => problemOf(form, field));

/** @param {Form} form @param {Field} field */
export const fieldRow = (form, field) => {
  if (field.is === "flags") return flags(form, field);
  const id = `field-${field.name}`;
  const value = form.values[field.name] ?? "";
  const problem = problemOf(form, field);
  const hint = hintOf(form, field);
  const described = problem ? `why-${field.name}` : hint ? `hint-${field.name}` : nothing;
  return html`<div class="field ${problem ? "has-problem" : ""}">
    <label for=${id}>${field.words}</label>
    <div class="field-line">
      ${field.negative
        ? html`<button type="button" class="square" data-act="form.sign" data-field=${field.name}
            aria-label=${say("field.sign")}>±</button>`
        : nothing}
      ${control(id, value, field, described, byKind(form, field))}
      ${betweenKey(field)}
      ${ownKey(field)}
    </div>
    ${problem ? problemLine(form, field) : hint ? html`<p class="field-hint" id="hint-${field.name}">${hint}</p>` : nothing}
  </div>`;
};

/** The way to a kind of one's own; the form comes back here. @param {Field} field */
const ownKey = ({ name, own }) =>
  own
    ? html`<button type="button" class="square own" data-act="form.open" data-form=${OWN[own]}
        data-field=${name} aria-label=${sayOne("kinds", `make_${own}`)}>${glyph("add")}</button>`
    : nothing;

/** @param {Field} field */
const betweenKey = ({ name, between }) =>
  between
    ? html`<button type="button" class="square times" data-act="form.between" data-field=${name}
        data-sign=${between} aria-label=${say(between === "/" ? "field.stroke" : "field.times")}>${between}</button>`
    : nothing;

/** What is said below a field; of an empty one also what its kind says, which no field is wide enough for. @param {Form} form @param {Field} field */
const hintOf = (form, field) => {
  const value = field.is === "number" && !form.values[field.name]?.trim() ? byKind(form, field) : "";
  return [value && say("field.empty_by_kind", { value }), field.hint].filter(Boolean).join(" ");
};

/** @param {Form} form */
export const strayProblem = (form) => {
  if (!form.problem || form.fields.some((field) => problemOf(form, field))) return nothing;
  const { words, remedy } = form.problem;
  return html`<p class="field-problem" role="alert">${words}${remedy ? html` ${remedy}` : nothing}</p>`;
};
