/** A paper of the job as tables: on the screen, in print, and for a spreadsheet. */

import { html, nothing } from "../markup.js";
import { verdictMark } from "../pieces/mark.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {NonNullable<State["meter"]["paper"]>["answer"]} Paper */
/** @typedef {Paper["tables"][number]} Table */
/** @typedef {Table["rows"][number]} Row */

/** @param {Row[number]} cell @param {string} head @param {boolean} first */
const cellOf = ({ shown, judged, within, line }, head, first) => {
  if (first) return html`<th scope="row">${shown}</th>`;
  if (line) return html`<td data-head=${head} class="to-write"><span class="unseen">${say("paper.line")}</span></td>`;
  return html`<td data-head=${head}>
    <b>${shown}</b>
    ${judged ? html`<span class="within judged">${judged}</span>` : nothing}
    ${within ? html`<span class="within">${within}</span>` : nothing}
  </td>`;
};

/**
 * A table. In print its head stands on each page it runs over: whose sheet it is, and what it tells.
 * @param {Table} table @param {string} running
 */
const tableOf = ({ title, heads, rows, notes }, running) => html`<section class="paper-table">
  <h2>${title}</h2>
  <table>
    <thead>
      <tr class="paper-running" aria-hidden="true"><th colspan=${heads.length}>${running}<b>${title}</b></th></tr>
      <tr>${heads.map(({ words }) => html`<th scope="col">${words}</th>`)}</tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) => html`<tr>${row.map((cell, at) => cellOf(cell, heads[at]?.words ?? "", at === 0))}</tr>`,
      )}
    </tbody>
  </table>
  ${notes.map((note) => html`<p class="faded">${note}</p>`)}
</section>`;

/** @param {State} state */
export const paperSheet = ({ meter, desk, place }) => {
  const paper = meter.paper?.of === `${desk?.id} ${place.screen}` ? meter.paper?.answer : null;
  if (!paper) return html`<p class="empty">${say("meter.waiting")}</p>`;
  return html`<article class="paper">
    <p class="paper-title">${paper.title}</p>
    ${paper.warnings.map((words) => html`<p class="paper-warning">${verdictMark("over", words)}</p>`)}
    <section class="paper-table">${paper.notes.map((note) => html`<p>${note}</p>`)}</section>
    ${paper.tables.map((table) => tableOf(table, paper.running))}
  </article>`;
};
