/** The top line: where we are, whether it is kept, and what the engine does. */

import { html, nothing } from "../markup.js";
import { glyph } from "../pieces/glyphs.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */

const STAGES = ["fetch", "start", "unpack", "open", "ready"];

/** @param {State} state */
export const titleOf = ({ place, desk }) => {
  if (place.screen === "job" && desk) return desk.job.name;
  if (place.screen === "zone" && desk) {
    return desk.job.zones.find(({ id }) => id === place.zone)?.name ?? say("zone.title");
  }
  return sayOne("title", place.screen);
};

/** @param {State} state */
const wayBack = ({ place, desk }) => {
  if (place.job && place.screen !== "job") {
    return { href: `#/job/${place.job}`, words: desk?.job.name ?? say("title.job") };
  }
  if (place.screen === "distance") return { href: "#/wrong", words: say("title.wrong") };
  return place.screen === "job" ? { href: "#/jobs", words: say("title.jobs") } : null;
};

/** On paper nothing else says to which job a line belongs. @param {State} state */
const ofWhat = ({ place, desk }) => (place.screen !== "job" && place.job ? desk?.job.name : "");

/** @param {State} state */
const keptWords = ({ place, desk, engine }) => {
  if (desk && place.job === desk.id) {
    if (desk.pen === "theirs") return say("kept.reads_only");
    if (desk.kept === "failed") return say("kept.failed");
    const waits = desk.waiting.length > 0 && desk.waiting.every(({ kept }) => kept);
    if (waits && engine.stage !== "ready") return say("kept.waiting");
    return sayOne("kept", desk.kept);
  }
  if (engine.stage === "failed") return say("engine.failed_short");
  return engine.stage === "ready" ? "" : sayOne("engine", engine.stage);
};

/** @param {State} state */
export const top = (state) => {
  const back = wayBack(state);
  const { stage } = state.engine;
  return html`
    ${back
      ? html`<a class="top-back" href=${back.href} aria-label=${say("top.back", { to: back.words })}
          >${glyph("back")}</a
        >`
      : html`<span class="top-mark">${glyph("job")}</span>`}
    <h1 id="title" tabindex="-1">${titleOf(state)}</h1>
    <p class="top-of">${ofWhat(state)}</p>
    <p class="top-state" role="status">${keptWords(state)}</p>
    ${stage === "ready" || stage === "failed"
      ? nothing
      : html`<progress
          class="top-progress"
          max=${STAGES.length}
          value=${Math.max(0, STAGES.indexOf(stage)) + 1}
          aria-label=${sayOne("engine", stage)}
        ></progress>`}
  `;
};
