/** The button that opens a file of one job or of all. */

import { html } from "../markup.js";
import { say } from "../say.js";
import { glyph } from "./glyphs.js";

export const fileButton = () => html`<label class="bench-button">
  ${glyph("open_file")}<span>${say("open.file")}</span>
  <input type="file" multiple class="unseen" accept=".json,application/json" data-input="open.file" />
</label>`;

/** The ways by which a job comes in, for the first screens. */
export const pasteWay = () => html`<a class="bench-button" href="#/open">
  ${glyph("paste")}<span>${say("open.paste")}</span>
</a>`;
