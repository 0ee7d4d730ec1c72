/** Taps one can turn to, each with what it would do: told before it is taken. */

import { html, nothing } from "../markup.js";
import { say } from "../say.js";
import { squareButton } from "./button.js";
import { verdictShape } from "./mark.js";

/** @typedef {import("../state").PreviewOption} PreviewOption */
/** @typedef {PreviewOption["effects"][number]} Effect */

/** @param {Effect} effect */
const effectWords = ({ name, shown, verdict }) => html`<span
  class="effect ${verdict === "over" || verdict === "near" ? `v-${verdict} hard` : ""}"
  >${say("ladder.effect", { name, shown })}</span
>`;

/** What an option does: this one's decibels apart, all else in a row. @param {PreviewOption | undefined} option */
export const effects = (option) => {
  if (!option) return nothing;
  if (option.problem) return html`<small>${say("ladder.refused", { words: option.problem.words })}</small>`;
  const rest = option.effects.filter(({ what }) => what !== "this");
  return html`<small class="effects">${rest.map(effectWords)}</small>`;
};

/** How much louder or quieter it makes this one. @param {PreviewOption | undefined} option */
export const ownChange = (option) =>
  option?.effects.find(({ what }) => what === "this")?.shown ?? "";

/** Where the way to the numbers will stand. */
const AWAITED_MORE = html`<span class="square" aria-hidden="true"></span>`;
/** A line of figures that are not known yet: nothing moves when they come. */
const AWAITED_CELLS = html`<span class="tap-cells" aria-hidden="true">&nbsp;</span>`;

/**
 * A row that takes an option, and beside it the way to the numbers behind it.
 * @param {unknown} row @param {PreviewOption | undefined} option
 * @param {Record<string, string>} data @param {string} title
 */
export const withNumbers = (row, option, data, title) => html`<div class="tap-pair">
  ${row}
  ${option?.effects.length
    ? squareButton("more", say("ladder.why", { title }), "ladder.why", { ...data, title })
    : option ? nothing : AWAITED_MORE}
</div>`;

/** The effects that some tap has, by name: the heads over the columns. @param {readonly (PreviewOption | undefined)[]} options */
const headsOf = (options) => {
  const all = options.flatMap((option) => option?.effects ?? []);
  return [...new Map(all.filter(({ what }) => what !== "this").map(({ what, name }) => [what, name]))];
};

/**
 * One line of figures under the heads; each keeps its name for those who hear it alone.
 * @param {PreviewOption | undefined} option @param {ReturnType<typeof headsOf>} heads
 */
const cells = (option, heads) => {
  if (!option) return AWAITED_CELLS;
  if (option.problem) return effects(option);
  return html`<span class="tap-cells">
    ${heads.map(([what]) => {
      const effect = option.effects.find((each) => each.what === what);
      if (!effect) return html`<span></span>`;
      const { name, shown, verdict } = effect;
      const hard = verdict === "over" || verdict === "near" ? `v-${verdict} hard` : "";
      return html`<span class="effect ${hard}"><span class="unseen">${name} </span>${shown}</span>`;
    })}
  </span>`;
};

/**
 * @typedef {{point: string, tap_w: number, at_v: number, shown: string, here: boolean,
 *   note: string, option: PreviewOption | undefined}} Tap
 */

/** @param {Tap} tap @param {ReturnType<typeof headsOf>} heads */
const tapButton = ({ point, tap_w, at_v, shown, here, note, option }, heads) => html`<button
  type="button"
  class="chip tap-row"
  data-act="point.tap"
  data-point=${point}
  data-tap=${tap_w}
  data-at=${at_v}
  aria-pressed=${here}
>
  <span class="tap-head">
    <b>${shown}</b> ${note ? html`<em>${note}</em>` : nothing}
    ${option && option.verdict !== "note" ? verdictShape(option.verdict) : nothing}
    <span class="tap-change">${here ? "" : ownChange(option)}</span>
  </span>
  ${cells(option, heads)}
</button>`;

/** Taps in one list, a row each, the names of their figures once above them. @param {readonly Tap[]} taps */
export const tapList = (taps) => {
  const heads = headsOf(taps.map(({ option }) => option));
  return html`<div class="tap-cells tap-heads" aria-hidden="true">
      ${heads.length ? heads.map(([, name]) => html`<span>${name}</span>`) : html`&nbsp;`}
    </div>
    ${taps.map((tap) => {
      const data = { point: tap.point, tap: String(tap.tap_w), at: String(tap.at_v) };
      return withNumbers(tapButton(tap, heads), tap.option, data, tap.shown);
    })}`;
};
