/** The other ways on from a job, behind its last zone: the thumb's row below stays one row. */

import { html } from "../markup.js";
import { say } from "../say.js";
import { benchButton } from "./button.js";
import { glyph } from "./glyphs.js";

/** @type {readonly [string, import("./glyphs.js").GlyphName, Parameters<typeof say>[0]][]} */
const WAYS = [
  ["test", "ticked", "title.test"],
  ["paper", "paper", "title.paper"],
  ["schedule", "jobs", "title.schedule"],
  ["limits", "limits", "title.limits"],
  ["kinds", "loudspeaker", "title.kinds"],
  ["history", "history", "title.history"],
];

/** @param {string} job */
export const jobWays = (job) => html`<section class="card job-ways" aria-label=${say("job.more")}>
  <h2>${say("job.more")}</h2>
  <div class="bench-buttons">
    ${benchButton("change", say("form.change_job"), "form.open", { form: "change_job" })}
    ${WAYS.map(
      ([screen, drawing, title]) => html`<a class="bench-button" href="#/job/${job}/${screen}">
        ${glyph(drawing)}<span>${say(title)}</span>
      </a>`,
    )}
  </div>
</section>`;
