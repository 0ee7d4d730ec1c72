/** The ways by which a job comes in and goes out, on the first screens and under a job. */

import { html, nothing } from "../markup.js";
import { benchButton } from "../pieces/button.js";
import { fileButton, pasteWay } from "../pieces/file_button.js";
import { glyph } from "../pieces/glyphs.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */

/** Under an empty tally. @param {State} state */
export const waysIn = ({ tally }) =>
  tally.rows.length ? nothing : html`<div class="ways-in">${pasteWay()} ${fileButton()}</div>`;

/** Under a job with nothing picked. @param {State} state */
export const travelWays = ({ desk, bench }) => {
  if (!desk || bench) return nothing;
  return html`<div class="bench-buttons travel-ways">
    <a class="bench-button" href="#/job/${desk.id}/share">${glyph("send")}<span>${say("title.share")}</span></a>
    <a class="bench-button" href="#/job/${desk.id}/history">${glyph("history")}<span>${say("title.history")}</span></a>
    ${benchButton("file", say("jobs.save"), "share.save", { job: desk.id })}
  </div>`;
};
