/** Buttons: each names its event and carries its values as text. */

import { html, nothing } from "../markup.js";
import { glyph } from "./glyphs.js";

/**
 * A large button of the bench, with its drawing above its word.
 * @param {import("./glyphs.js").GlyphName} drawing
 * @param {string} words
 * @param {string} act
 * @param {Record<string, string | undefined>} [data] id, form, thing, zone, point, way, ... as text
 * @param {{off?: boolean, chief?: boolean}} [how]
 */
export const benchButton = (drawing, words, act, data = {}, { off, chief } = {}) => html`<button
  type="button"
  class="bench-button ${chief ? "chief" : ""}"
  data-act=${act}
  data-values=${JSON.stringify(data)}
  ?disabled=${off}
>
  ${glyph(drawing)}<span>${words}</span>
</button>`;

/**
 * A square button with a drawing only; its word is for those who cannot see it.
 * @param {import("./glyphs.js").GlyphName} drawing
 * @param {string} words
 * @param {string} act
 * @param {Record<string, string | undefined>} [data]
 * @param {{off?: boolean, pressed?: boolean}} [how]
 */
export const squareButton = (drawing, words, act, data = {}, { off, pressed } = {}) => html`<button
  type="button"
  class="square"
  data-act=${act}
  data-values=${JSON.stringify(data)}
  aria-label=${words}
  aria-pressed=${pressed === undefined ? nothing : pressed}
  ?disabled=${off}
>
  ${glyph(drawing)}
</button>`;
