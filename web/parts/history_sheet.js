/** The last states of a job, the newest first, each to go back to. */

import { html, nothing, repeat } from "../markup.js";
import { dayOf } from "../pieces/day.js";
import { verdictMark } from "../pieces/mark.js";
import { say } from "../say.js";
import { MOST_STATES } from "../states.js";

/** @typedef {import("../state").PastState} PastState */

/** @param {PastState} state @param {number} rev the state of now */
const stateLine = ({ job, at, words, counts, verdict, headline }, rev) => {
  const now = job.rev === rev;
  return html`<li class="card state-line" data-rev=${job.rev}>
    <p class="state-head"><b>${say(/** @type {any} */ (words))}</b>
      <span class="quiet">${now ? say("history.now") : say("history.at", dayOf(at) ?? {})}</span></p>
    <p class="quiet">${counts}</p>
    ${verdict ? html`<p>${verdictMark(verdict, headline)}</p>` : nothing}
    ${now
      ? nothing
      : html`<div class="bench-row">
          <button type="button" class="plain-button" data-act="history.back" data-rev=${job.rev}>${say("history.back")}</button>
          <button type="button" class="plain-button" data-act="history.compare" data-rev=${job.rev}>${say("history.compare")}</button>
        </div>`}
  </li>`;
};

/** @param {import("../state").State} state */
export const historySheet = ({ desk, past }) => {
  if (!desk || past?.id !== desk.id) return nothing;
  if (!past.states.length) return html`<p class="empty">${say("history.none")}</p>`;
  return html`<p class="history-how quiet">${say("history.how", { most: `${MOST_STATES}` })}</p>
    <ol class="cards">
      ${repeat(
        past.states,
        ({ job }) => job.rev,
        (state) => stateLine(state, desk.job.rev),
      )}
    </ol>`;
};
