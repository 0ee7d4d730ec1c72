/** Two states of a job side by side, change by change; each is taken from one of them. */

import { html, nothing, repeat } from "../markup.js";
import { verdictMark } from "../pieces/mark.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").Change} Change */
/** @typedef {import("../state").Comparing} Comparing */
/** @typedef {"mine" | "theirs"} Side */

/** Which side a change is taken from; null while a person has to say. */
const takenOf = (/** @type {Comparing} */ { taken }, /** @type {Change} */ { id, usual, must_choose }) =>
  taken[id] ?? (must_choose ? null : usual);

/** @param {Comparing} comparing @param {Change} change @param {Side} side */
const choice = (comparing, change, side) => {
  const value = change[side] || say("compare.absent");
  const head = comparing.past ? (side === "mine" ? "compare.now" : "compare.then") : `compare.${side}`;
  return html`<button type="button" class="side" data-act="compare.take"
    data-values=${JSON.stringify({ change: change.id, side })}
    aria-pressed=${takenOf(comparing, change) === side}>
    <span class="side-head">${say(/** @type {any} */ (head))}</span><b>${value}</b>
  </button>`;
};

/** @param {Comparing} comparing @param {Change} change */
const changePart = (comparing, change) => {
  const { id, field, base, side, title, what } = change;
  if (side === "both") return html`<div class="change"><p>${field}</p><p class="quiet">${change.words}</p></div>`;
  const whose =
    side === "clash"
      ? verdictMark("near", say("compare.clash"))
      : html`<span class="quiet">${sayOne("compare", `side_${side}`)}</span>`;
  return html`<div class="change" role="group" aria-label="${title || what}: ${field}" data-change=${id}>
    <p class="change-head"><span>${field}</span>
      ${comparing.past ? nothing : whose}</p>
    <div class="sides">${choice(comparing, change, "mine")} ${choice(comparing, change, "theirs")}</div>
    ${base && !comparing.past ? html`<p class="quiet">${say("compare.before")}: ${base}</p>` : nothing}
  </div>`;
};

/** Changes of one thing stand together. @param {Change[]} changes */
const grouped = (changes) => {
  /** @type {{key: string, what: string, title: string, changes: Change[]}[]} */
  const groups = [];
  for (const change of changes) {
    const key = `${change.what} ${JSON.stringify(change.where)}`;
    const last = groups.at(-1);
    if (last?.key === key) last.changes.push(change);
    else groups.push({ key, what: change.what, title: change.title, changes: [change] });
  }
  return groups;
};

/** @param {import("../state").State} state */
export const compareSheet = ({ comparing, place }) => {
  if (!comparing || comparing.id !== place.job) {
    return html`<p class="empty">${say("compare.nothing")}</p>`;
  }
  const { changes, words, united } = comparing.answer;
  return html`<p class="compare-words">${comparing.past ? say("compare.since") : words}</p>
    ${changes.length ? nothing : html`<p class="empty">${say("compare.no_change")}</p>`}
    ${repeat(
      grouped(changes),
      ({ key }) => key,
      ({ what, title, changes: own }) => html`<section class="card change-group">
        <h2>${title || what}</h2>
        ${title ? html`<p class="quiet">${what}</p>` : nothing}
        ${own.map((change) => changePart(comparing, change))}
      </section>`,
    )}
    ${united.length && !comparing.past
      ? html`<section class="card"><ul>${united.map((line) => html`<li>${line}</li>`)}</ul></section>`
      : nothing}`;
};
