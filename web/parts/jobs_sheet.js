/** The list of jobs kept on this device. */

import { html, nothing, repeat } from "../markup.js";
import { glyph } from "../pieces/glyphs.js";
import { verdictMark } from "../pieces/mark.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").JobLine} JobLine */

/** @param {JobLine} line @param {boolean} picked */
const jobLine = ({ id, name, counts, verdict, headline }, picked) => html`<li
  class="card job-line ${picked ? "picked" : ""}"
>
  <a class="card-way" href="#/job/${id}">
    <b>${name}</b>
    <span class="quiet">${counts}</span>
    ${verdictMark(verdict, headline)}
  </a>
  <button type="button" class="square" data-act="jobs.pick" data-job=${id}
    aria-label=${say("jobs.more", { name })} aria-expanded=${picked}>
    ${glyph("more")}
  </button>
</li>`;

const none = () => html`<div class="empty">
  <p>${say("jobs.none")}</p>
  <p class="quiet">${say("jobs.none_how")}</p>
</div>`;

/** @param {State} state */
export const jobsSheet = ({ jobs, bench }) => {
  if (!jobs) return nothing;
  if (!jobs.length) return none();
  const picked = bench?.is === "thing" ? bench.id : null;
  return html`<ul class="cards" aria-label=${say("title.jobs")}>
    ${repeat(
      jobs,
      ({ id }) => id,
      (line) => jobLine(line, line.id === picked),
    )}
  </ul>`;
};
