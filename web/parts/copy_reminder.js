/** A quiet word that much of a job is on this device only. */

import { html, nothing } from "../markup.js";
import { say } from "../say.js";
import { isDue, notCopied } from "../travel/copies.js";

/** @param {import("../state").State} state */
export const copyReminder = (state) => {
  const { desk, place } = state;
  if (!desk || place.job !== desk.id || place.screen !== "job" || !isDue(state)) return nothing;
  return html`<div class="notice" role="status">
    <p>${say("copies.remind", { count: `${notCopied(state)}` })}</p>
    <a class="plain-button" href="#/job/${desk.id}/share">${say("copies.way")}</a>
    <button type="button" class="plain-button" data-act="copies.later">${say("copies.later")}</button>
  </div>`;
};
