/** The last states of a job, the newest first, each to go back to. */

import { html, nothing, repeat } from "../markup.js";
import { dayOf } from "../pieces/day.js";
import { verdictMark } from "../pieces/mark.js";
import { say } from "../say.js";
import { MOST_STATES } from "../states.js";

/** @typedef {import("../state").PastState} PastState */
/** @typedef {import("../state").Job} Job */
/** @typedef {import("../state").Comparison["changes"][number]} Change */

/** So many changes of one state are told one by one. */
const MOST_TOLD = 3;

/** What was changed, from what to what. @param {Change} change */
const changeLine = ({ what, title, field, mine, base }) => {
  const name = title || what;
  if (mine && base) return say("history.changed", { name, field, from: base, to: mine });
  return say(mine ? "history.new" : "history.gone", { name, field, value: mine || base || "" });
};

/** @param {readonly Change[]} [changes] @param {readonly string[]} [readings] those that were new, in words */
const changeList = (changes = [], readings = []) => {
  const told = [...readings.map((words) => say("history.read", { words })), ...changes.map(changeLine)];
  const rest = told.length - MOST_TOLD;
  return html`${told.slice(0, MOST_TOLD).map((line) => html`<p class="history-change">${line}</p>`)}
    ${rest > 0 ? html`<p class="quiet">${say("history.more", { n: String(rest) })}</p>` : nothing}`;
};

/** Whether going back would change nothing: readings and ticks, and when it was kept, stay as they are. */
const alike = (/** @type {Job} */ one, /** @type {Job} */ other) => {
  const [then, now] = [one, other].map(({ rev, saved_at, base, readings, ticks, ...rest }) => JSON.stringify(rest));
  return then === now;
};

/**
 * @param {PastState} state @param {Job} of the state of now
 * @param {NonNullable<import("../state").State["past"]>} past
 */
const stateLine = ({ job, at, words, counts, verdict, headline }, of, { changes, readings }) => {
  const now = job.rev === of.rev;
  const same = !now && alike(job, of);
  return html`<li class="card state-line" data-rev=${job.rev}>
    <p class="state-head"><b>${say(/** @type {any} */ (words))}</b>
      <span class="quiet">${now ? say("history.now") : say("history.at", dayOf(at) ?? {})}</span></p>
    ${verdict ? html`<p>${verdictMark(verdict, headline)}</p>` : nothing}
    ${changeList(changes[job.rev], readings[job.rev])}
    <p class="quiet">${counts}</p>
    ${same ? html`<p class="quiet">${say("history.same")}</p>` : nothing}
    ${now || same
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
        (state) => stateLine(state, desk.job, past),
      )}
    </ol>`;
};
