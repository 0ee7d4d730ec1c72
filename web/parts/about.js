/** What this is, which version, whether it works without signal, and the words that keep people safe. */

import { html, live, nothing } from "../markup.js";
import { glyph } from "../pieces/glyphs.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */

const SAFETY = /** @type {const} */ ([
  "safety.not_for",
  "safety.dead",
  "safety.fire",
  "safety.selector",
  "safety.overhead",
  "safety.class",
  "safety.insulation",
  "safety.verdicts",
]);

/** @param {State} state */
const units = ({ manner }) => html`<section class="card" aria-labelledby="units-title">
  <h2 id="units-title">${say("about.units")}</h2>
  <div class="field">
    <label for="length">${say("about.length")}</label>
    <select id="length" data-input="manner.length">
      <option value="m" .selected=${live(manner.length === "m")}>${say("about.metres")}</option>
      <option value="ft" .selected=${live(manner.length === "ft")}>${say("about.feet")}</option>
    </select>
  </div>
  <div class="field">
    <label for="decimal">${say("about.decimal")}</label>
    <select id="decimal" data-input="manner.decimal">
      <option value="." .selected=${live(manner.decimal === ".")}>${say("about.decimal_point", { example: "7.5" })}</option>
      <option value="," .selected=${live(manner.decimal === ",")}>${say("about.decimal_comma", { example: "7,5" })}</option>
    </select>
  </div>
</section>`;

/** @param {State} state */
const kept = ({ offline, kept_for_good, engine }) => html`<section class="card" aria-labelledby="kept-title">
  <h2 id="kept-title">${say("about.kept")}</h2>
  <p class="offline offline-${offline}">${sayOne("offline", offline)}</p>
  <p class="quiet">
    ${kept_for_good === null
      ? say("about.on_device")
      : kept_for_good
        ? say("about.kept_for_good")
        : say("about.may_be_cleared")}
  </p>
  ${engine.way ? html`<p class="quiet">${sayOne("start", engine.way)}</p>` : nothing}
  ${kept_for_good === false
    ? html`<button type="button" class="plain-button" data-act="storage.ask">
        ${say("about.ask_for_good")}
      </button>`
    : nothing}
  <button type="button" class="plain-button" data-act="offline.check">
    ${say("about.check")}
  </button>
</section>`;

/** @param {State} state */
const changes = ({ changes: all }) =>
  all?.length
    ? html`<section class="card" aria-labelledby="changes-title">
        <h2 id="changes-title">${say("about.changes")}</h2>
        ${all.map(
          ({ version, changes: lines }) => html`<h3>${version}</h3>
            <ul>
              ${lines.map((line) => html`<li>${line}</li>`)}
            </ul>`,
        )}
      </section>`
    : nothing;

/** @param {State} state */
export const about = (state) => html`
  <section class="card about-head">
    <p class="about-mark">${glyph("job")}</p>
    <p class="about-name">${say("app.name")}</p>
    <p>${say("about.what")}</p>
    <p class="quiet">${say("about.version", { version: state.engine.version ?? "…" })}</p>
  </section>
  <section class="card safety" aria-labelledby="safety-title">
    <h2 id="safety-title">${say("about.safety")}</h2>
    <ul>
      ${SAFETY.map((code) => html`<li>${say(code)}</li>`)}
    </ul>
  </section>
  ${units(state)} ${kept(state)} ${changes(state)}
  <p class="about-links"><a href="licences.txt">${say("about.licences")}</a></p>
`;
