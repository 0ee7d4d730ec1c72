/** What one tap or one other loudspeaker would do, number by number; each opens its working. */

import { answerTo } from "../asked.js";
import { html, nothing } from "../markup.js";
import { squareButton } from "../pieces/button.js";
import { figure } from "../pieces/figure.js";
import { verdictMark } from "../pieces/mark.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").PreviewOption["effects"][number]} Effect */
/** @typedef {Extract<NonNullable<State["bench"]>, {is: "option"}>} OptionBench */

/** As it was last worked out for the job as it is now. @param {State} state @param {OptionBench} bench */
const optionOf = (state, { point, command, swap }) => {
  const { preview } = state;
  if (!swap) return preview?.point === point ? preview.options[`${command.tap_w}`] : undefined;
  return answerTo(state, "swaps")?.answer.find(({ kind }) => kind === swap)?.option;
};

/** A load fits, a cable keeps its limit. @param {Effect} effect */
const mark = ({ what, verdict }) => {
  if (verdict === "note") return nothing;
  return verdictMark(verdict, sayOne(what === "far" ? "loss_verdict" : "verdict", verdict));
};

/** @param {Effect} effect @param {import("../pieces/figure.js").Would} would */
const effectRow = (effect, would) => html`<div>
  <dt>${effect.name}</dt>
  <dd>${mark(effect)} ${figure(effect.shown, effect.finding, effect.name, would)}</dd>
</div>`;

/** @param {State} state @param {OptionBench} bench */
export const optionBench = (state, bench) => {
  const { title, command } = bench;
  const option = optionOf(state, bench);
  return html`<div class="bench-head">
      <h2 id="option-title" tabindex="-1">${say("ladder.would", { title })}</h2>
      ${squareButton("close", say("bench.close"), "bench.close")}
    </div>
    ${option?.words ? html`<p>${option.words}</p>` : nothing}
    ${option
      ? html`<dl class="would">${option.effects.map((each) => effectRow(each, { commands: [command] }))}</dl>`
      : html`<p class="quiet" role="status">${say("working.asked")}</p>`}
    <div class="bench-row">
      <button type="button" class="chief-button" data-act="ladder.take">${say("ladder.take", { title })}</button>
    </div>`;
};
