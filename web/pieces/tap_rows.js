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

/**
 * A row that takes an option, and beside it the way to the numbers behind it.
 * @param {unknown} row @param {PreviewOption | undefined} option
 * @param {Record<string, string>} data @param {string} title
 */
export const withNumbers = (row, option, data, title) => html`<div class="tap-pair">
  ${row}
  ${option?.effects.length
    ? squareButton("more", say("ladder.why", { title }), "ladder.why", { ...data, title })
    : nothing}
</div>`;

/**
 * @param {{point: string, tap_w: number, at_v: number, shown: string, here: boolean,
 *   note: string, option: PreviewOption | undefined}} tap
 */
const tapButton = ({ point, tap_w, at_v, shown, here, note, option }) => html`<button
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
    ${option && !here ? verdictShape(option.verdict) : nothing}
    <span class="tap-change">${here ? "" : ownChange(option)}</span>
  </span>
  ${here ? nothing : effects(option)}
</button>`;

/** @param {Parameters<typeof tapButton>[0]} tap */
export const tapRow = (tap) => {
  const { point, tap_w, at_v, shown, here, option } = tap;
  const data = { point, tap: String(tap_w), at: String(at_v) };
  return withNumbers(tapButton(tap), here ? undefined : option, data, shown);
};
