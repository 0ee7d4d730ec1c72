/** Any form: its fields, its problem beside the field it concerns, and one button to send it. */

import { isThere } from "../forms/shape.js";
import { html } from "../markup.js";
import { squareButton } from "../pieces/button.js";
import { fieldRow, strayProblem } from "../pieces/field.js";
import { say } from "../say.js";

/** @param {import("../state").Form} form @param {boolean} [closes] */
export const formPart = (form, closes = true) => html`<form
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
  <div class="fields">${form.fields.filter((field) => isThere(form, field)).map((field) => fieldRow(form, field))}</div>
  ${strayProblem(form)}
  <div class="form-send">
    <button type="submit" class="chief-button" ?disabled=${form.busy}>
      ${form.busy ? say("form.busy") : form.send}
    </button>
  </div>
</form>`;
