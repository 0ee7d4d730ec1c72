/** What else could hang here: each kind on its best tap, with what it would do. */

import { html, nothing } from "../markup.js";
import { squareButton } from "../pieces/button.js";
import { verdictShape } from "../pieces/mark.js";
import { effects, ownChange } from "../pieces/tap_rows.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../line_state").Swap} Swap */

/** @param {Swap} swap @param {number} at */
const swapRow = ({ title, line, option }, at) => html`<button
  type="button"
  class="chip tap-row"
  data-act="ladder.swap"
  data-at=${at}
>
  <span class="tap-head">
    <b>${title}</b> ${verdictShape(option.verdict)}
    <span class="tap-change">${ownChange(option)}</span>
  </span>
  <em>${line}</em>
  ${effects(option)}
</button>`;

/** @param {Swap[] | undefined} swaps */
const rows = (swaps) => {
  if (!swaps) return html`<p class="quiet" role="status">${say("ladder.swap_asked")}</p>`;
  if (!swaps.length) return html`<p class="quiet">${say("ladder.swap_none")}</p>`;
  return html`<div class="tap-rows">${swaps.map(swapRow)}</div>`;
};

/** @param {State} state @param {string} point */
export const swapBench = ({ desk, line }, point) => {
  const title = desk?.seen.faces.things[point]?.title ?? "";
  return html`<div class="bench-head">
      <h2>${say("ladder.swap_title", { title })}</h2>
      ${squareButton("close", say("bench.close"), "ladder.swap_close", { point })}
    </div>
    ${desk ? rows(line.swaps?.of === point ? line.swaps.answer : undefined) : nothing}
    <div class="bench-row">
      <button type="button" class="plain-button" data-act="form.open" data-form="own_loudspeaker">
        ${say("kinds.own_loudspeaker")}
      </button>
    </div>`;
};
