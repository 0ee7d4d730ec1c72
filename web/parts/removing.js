/** The one question that stops everything else: whether a job is to be deleted. */

import { html } from "../markup.js";
import { say } from "../say.js";

/** @param {import("../state").State["removing"]} removing */
export const removingPart = (removing) => html`
  <h2 id="removing-title">${say("removing.title", { name: removing?.name ?? "" })}</h2>
  <p>${say("removing.why")}</p>
  <div class="bench-row">
    <button type="button" class="plain-button" data-act="jobs.keep_it" autofocus>${say("removing.keep")}</button>
    <button type="button" class="danger-button" data-act="jobs.remove">${say("removing.remove")}</button>
  </div>
`;
