/** What else could hang here: each kind on its best tap, with what it would do. */

import { answerTo } from "../asked.js";
import { html, nothing } from "../markup.js";
import { squareButton } from "../pieces/button.js";
import { beforeTouch } from "../pieces/caution.js";
import { verdictMark } from "../pieces/mark.js";
import { effects, ownChange, withNumbers } from "../pieces/tap_rows.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../line_state").Swap} Swap */

/** @param {Swap} swap @param {number} at */
const swapButton = ({ title, line, option, neighbour }, at) => html`<button
  type="button"
  class="chip tap-row"
  data-act="ladder.swap"
  data-at=${at}
>
  <span class="tap-head">
    <b>${title}</b>
    ${option.verdict === "note" ? nothing : verdictMark(option.verdict)}
    <span class="tap-change">${ownChange(option)}</span>
  </span>
  <em>${neighbour ? say("ladder.swap_beside", { line }) : line}</em>
  ${effects(option)}
</button>`;

/** @param {string} point @returns {(swap: Swap, at: number) => unknown} */
const swapRow = (point) => (swap, at) =>
  withNumbers(swapButton(swap, at), swap.option, { point, swap: swap.kind }, swap.title);

/** @param {Swap[] | undefined} swaps @param {string} point */
const rows = (swaps, point) => {
  if (!swaps) return html`<p class="quiet" role="status">${say("ladder.swap_asked")}</p>`;
  if (!swaps.length) return html`<p class="quiet">${say("ladder.swap_none")}</p>`;
  return html`<p class="quiet">${say("ladder.swap_marks")}</p>
    <div class="tap-rows">${swaps.map(swapRow(point))}</div>`;
};

/** @param {State} state @param {string} point */
export const swapBench = (state, point) => {
  const { desk } = state;
  const asked = answerTo(state, "swaps");
  const title = desk?.seen.faces.things[point]?.title ?? "";
  return html`<div class="bench-head">
      <h2>${say("ladder.swap_title", { title })}</h2>
      ${squareButton("close", say("bench.close"), "ladder.swap_close", { point })}
    </div>
    ${desk ? rows(asked && !asked.late ? asked.answer : undefined, point) : nothing}
    <div class="bench-row">
      <button type="button" class="plain-button" data-act="form.open" data-form="own_loudspeaker">
        ${say("kinds.own_loudspeaker")}
      </button>
    </div>
    ${beforeTouch()} <p class="quiet">${say("safety.overhead")}</p>`;
};
