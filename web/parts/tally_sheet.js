/** The tally's upper half: the line, the sum, the verdict, and the rows that make it. */

import { html, live, nothing, repeat } from "../markup.js";
import { shareBar } from "../pieces/bar.js";
import { figure } from "../pieces/figure.js";
import { glyph } from "../pieces/glyphs.js";
import { shape } from "../pieces/mark.js";
import { sentence } from "../pieces/sentence.js";
import { problemAt, wattsField } from "../pieces/watts_field.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Tally} Tally */
/** @typedef {import("../state").TallyRow} TallyRow */

/** @param {State} state */
const volts = ({ tally, catalogue }) => html`<fieldset class="volts">
  <legend class="unseen">${say("tally.line_v")}</legend>
  ${catalogue.line_volts.map(
    ({ shown }) => html`<label class="volt">
      <input type="radio" name="line_v" data-input="tally.volts" data-text=${shown}
        .checked=${live(tally.line_v === shown)} />
      <span>${shown}</span>
    </label>`,
  )}
</fieldset>`;

/** @param {State} state */
const supply = (state) => html`<div class="supply">
  ${volts(state)}
  ${wattsField({
    field: "amplifier_w",
    words: say("tally.amplifier_w"),
    value: state.tally.amplifier_w,
    problem: problemAt(state.tally, "amplifier_w"),
  })}
</div>`;

/**
 * @param {"tally.share" | "tally.left" | "tally.left_feeds"} code @param {string | undefined} shown
 * @param {string | null | undefined} finding
 */
const smallFigure = (code, shown, finding) => html`<div>
  <dt>${say(code)}</dt>
  <dd>${shown ? figure(shown, finding, say(code)) : "–"}</dd>
</div>`;

/** @param {State} state */
const sum = ({ tally }) => {
  const summary = tally.answer?.summary;
  const verdict = summary?.verdict ?? "note";
  const counted = tally.rows.length > 0;
  const figures = counted ? summary : null;
  const sum = counted ? (summary?.sum ?? say("tally.summing")) : say("tally.nothing");
  return html`<section class="sum" aria-label=${say("tally.sum")}>
    <div class="sum-figures">
      <p class="sum-big ${sum.length > 4 ? "long" : ""}">${figure(sum, figures?.finding, say("tally.sum"))}</p>
      <dl class="sum-small">
        ${smallFigure("tally.share", figures?.share, figures?.share_finding)}
        ${smallFigure(figures?.left_by === "feeds" ? "tally.left_feeds" : "tally.left", figures?.left, figures?.left_finding)}
      </dl>
    </div>
    ${shareBar(counted ? figures?.share_fraction : 0, verdict, tally.answer?.job.limits.load_fraction)}
  </section>
  <div class="sum-words" role="status">
    ${figures
      ? html`${sentence(verdictWords(figures), figures.verdict_finding, "sum-verdict")} ${notChecked(figures)}`
      : html`<p class="sum-headline">${say(counted ? "tally.not_summed" : "tally.first_words")}</p>`}
  </div>`;
};

/** @param {import("../state").TallySummary} summary */
const verdictWords = ({ verdict, headline, reason }) => html`<span class="sum-headline v-${verdict}"
    >${shape(verdict)}<strong>${headline}</strong></span
  ><span class="sum-reason">${reason}</span>`;

/** @param {import("../state").TallySummary} summary */
const notChecked = ({ not_checked }) =>
  not_checked.length
    ? html`<p class="not-checked">${say("not_checked", { list: not_checked.join(", ") })}</p>`
    : nothing;

/** @param {Tally} tally @param {TallyRow} row @param {number} index */
const tallyRow = ({ answer, outputs }, row, index) => {
  const answered = answer?.rows[index];
  const words = say("tally.row", { count: row.count, tap: row.shown_tap });
  const problem = answered?.problem;
  const name = { row: words };
  return html`<li class="tally-row ${problem ? "has-problem" : ""}">
    <span class="tally-row-words">
      <b>${words}</b>
      ${outputs.length ? html`<i>${say(/** @type {any} */ (`tally.output_${row.output}`))}</i>` : nothing}
      ${problem ? html`<span class="field-problem" role="alert">${problem.words}</span>` : nothing}
    </span>
    <span class="tally-row-sum">${figure(answered?.sum, answered?.finding, words)}</span>
    <button type="button" class="square" data-act="tally.less" data-key=${row.key}
      ?disabled=${row.count === "1"} aria-label=${say("tally.less", name)}>${glyph("less")}</button>
    <button type="button" class="square" data-act="tally.more" data-key=${row.key}
      aria-label=${say("tally.more", name)}>${glyph("add")}</button>
    <button type="button" class="square" data-act="tally.remove" data-key=${row.key}
      aria-label=${say("tally.remove", name)}>${glyph("close")}</button>
  </li>`;
};

/** @param {Tally} tally */
const rows = (tally) => {
  const newestFirst = tally.rows.map((row, index) => ({ row, index })).reverse();
  return html`<ol class="tally-rows" reversed aria-label=${say("tally.rows")}>
    ${repeat(
      newestFirst,
      ({ row }) => row.key,
      ({ row, index }) => tallyRow(tally, row, index),
    )}
  </ol>`;
};

/** The way for a keyboard or a screen reader: a row as a line of text. @param {Tally} tally */
const typedRow = (tally) => html`<form class="typed-row" data-act="tally.line_add">
  <label for="tally-line">${say("tally.line")}</label>
  <div class="field-line">
    <input id="tally-line" type="text" autocomplete="off" autocapitalize="off" spellcheck="false"
      placeholder=${say("tally.line_example")} .value=${live(tally.line)} data-input="tally.line"
      aria-invalid=${Boolean(tally.line_problem)}
      aria-describedby=${tally.line_problem ? "why-line" : nothing} />
    <button type="submit" class="plain-button">${say("form.add")}</button>
  </div>
  ${tally.line_problem
    ? html`<p class="field-problem" id="why-line" role="alert">${tally.line_problem}</p>`
    : nothing}
</form>`;

/** @param {Tally} tally */
const more = ({ rows: all, outputs }) => html`<div class="more-ways">
  <button type="button" class="plain-button" data-act="tally.output_add">${say(outputs.length ? "tally.output_one_more" : "tally.output_add")}</button>
  ${outputs.length
    ? html`<button type="button" class="plain-button" data-act="tally.output_drop">${say("tally.output_drop")}</button>`
    : nothing}
  ${all.length
    ? html`<button type="button" class="plain-button" data-act="tally.clear">${say("tally.clear")}</button>`
    : nothing}
</div>`;

/** @param {State} state */
export const tallySheet = (state) => html`
  ${supply(state)} ${sum(state)} ${rows(state.tally)} ${typedRow(state.tally)} ${more(state.tally)}
`;
