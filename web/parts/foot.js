/** The bottom line: the ways to the other screens, under the thumb. */

import { lastJob } from "../address.js";
import { html, nothing } from "../markup.js";
import { glyph } from "../pieces/glyphs.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */

/**
 * What lies behind a screen is lit by it, too, but is not that page itself.
 * @param {string} href @param {import("../pieces/glyphs.js").GlyphName} drawing
 * @param {string} words @param {boolean} here @param {boolean} [behind]
 */
const way = (href, drawing, words, here, behind = false) =>
  html`<a class="foot-way" href=${href} aria-current=${here ? "page" : behind ? "true" : nothing}
    >${glyph(drawing)}<span>${words}</span></a
  >`;

/** @param {State} state */
export const foot = ({ place, desk, jobs }) => {
  // The job one was at last, unless it is gone; until that is known it counts as there, so that no way moves.
  const job = desk?.id ?? lastJob();
  const there = job && (jobs?.some(({ id }) => id === job) ?? true);
  return html`
  ${way("#/", "tally", say("title.tally"), place.screen === "tally")}
  ${way("#/jobs", "jobs", say("title.jobs"), place.screen === "jobs")}
  ${there ? way(`#/job/${job}`, "job", say("title.job"), place.screen === "job", place.job !== null) : nothing}
  ${way("#/wrong", "wrong", say("foot.wrong"), place.screen === "wrong" || place.screen === "distance")}
  ${way("#/about", "about", say("title.about"), place.screen === "about")}
`;
};
