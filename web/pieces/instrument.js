/** What is measured with: said once, kept with every reading, remembered on this device. */

import { html, live, nothing } from "../markup.js";
import { say, sayOne } from "../say.js";

const FIELDS = /** @type {const} */ (["name", "tolerance_pct", "temperature_c", "leads_ohm"]);
const HINTS = { name: "", tolerance_pct: "%", temperature_c: "°C", leads_ohm: "Ω" };

/** @param {import("../state").State} state */
export const instrumentPart = ({ meter: { instrument } }, open = false) => html`<details
  class="meter-part instrument" ?open=${open}
>
  <summary>${instrument.name ? say("instrument.is", { name: instrument.name }) : say("instrument.title")}</summary>
  <div class="far-row">
    ${FIELDS.map(
      (field) => html`<div class="field field-${field}">
        <label for=${`instrument-${field}`}>${sayOne("instrument", field)}</label>
        <input id=${`instrument-${field}`} type="text" inputmode=${field === "name" ? "text" : "decimal"}
          autocomplete="off" placeholder=${HINTS[field] || nothing} .value=${live(instrument[field] ?? "")}
          data-input="meter.instrument" data-field=${field} />
      </div>`,
    )}
  </div>
  <p class="faded">${say("instrument.why")}</p>
</details>`;
