/** The ways by which a job comes in, under an empty tally. */

import { html, nothing } from "../markup.js";
import { fileButton, pasteWay } from "../pieces/file_button.js";

/** @param {import("../state").State} state */
export const waysIn = ({ tally }) =>
  tally.rows.length ? nothing : html`<div class="ways-in">${pasteWay()} ${fileButton()}</div>`;
