/** Any form: its fields, its problem beside the field it concerns, and one button to send it. */

import { isThere } from "../forms/shape.js";
import { html, nothing } from "../markup.js";
import { squareButton } from "../pieces/button.js";
import { fieldRow, hasProblem, strayProblem } from "../pieces/field.js";
import { say } from "../say.js";

/** @typedef {import("../state").Form} Form */
/** @typedef {import("../state").Field} Field */

/** Whether a field says anything; a choice that cannot be empty does not. @param {Form} form @param {Field} field */
const isFilled = ({ values, touched }, { name, choices }) =>
  touched.includes(name) || (Boolean(values[name]) && (choices?.some(({ value }) => !value) ?? true));

/** What is rarely needed, folded away while nothing stands there. @param {Form} form @param {Field[]} fields */
const folded = (form, fields) =>
  fields.length
    ? html`<details class="rarely" ?open=${hasProblem(form, fields) || fields.some((field) => isFilled(form, field))}>
        <summary>${say("form.rarely")}</summary>
        <div class="fields">${fields.map((field) => fieldRow(form, field))}</div>
      </details>`
    : nothing;

/** @param {Form} form @param {boolean} [closes] */
export const formPart = (form, closes = true) => {
  const there = form.fields.filter((field) => isThere(form, field));
  return html`<form
  class="form"
  data-act="form.send"
  novalidate
  autocomplete="off"
  aria-labelledby="form-title"
>
  <div class="bench-head">
    <h2 id="form-title" tabindex="-1">${form.title}</h2>
    ${closes ? squareButton("close", say("form.close"), "form.close") : ""}
  </div>
  <div class="fields">
    ${there.filter(({ rarely }) => !rarely).map((field) => fieldRow(form, field))}
    ${folded(form, there.filter(({ rarely }) => rarely))}
  </div>
  ${strayProblem(form)}
  <div class="form-send">
    <button type="submit" class="chief-button" ?disabled=${form.busy}>
      ${form.busy ? say("form.busy") : form.send}
    </button>
  </div>
</form>`;
};
