/** What it takes to get at the line here, in words; it moves what is asked for next. */

import { html, live } from "../markup.js";
import { say, sayOne } from "../say.js";

const ACCESSES = /** @type {const} */ (["rack", "box", "control", "listen", "tone", "earth"]);
const WORDS = /** @type {const} */ (["usual", "easy", "hard", "never"]);

/** @param {import("../state").State} state */
export const effortPart = ({ meter: { efforts } }) => html`<details class="meter-part efforts">
  <summary>${say("effort.title")}</summary>
  <div class="far-row">
    ${ACCESSES.map(
      (access) => html`<div class="field">
        <label for=${`effort-${access}`}>${sayOne("effort", access)}</label>
        <select id=${`effort-${access}`} data-input="meter.effort" data-access=${access}>
          ${WORDS.map(
            (word) => html`<option value=${word} .selected=${live((efforts[access] ?? "usual") === word)}>
              ${sayOne("effort", `is_${word}`)}</option>`,
          )}
        </select>
      </div>`,
    )}
  </div>
  <p class="faded">${say("effort.why")}</p>
</details>`;
