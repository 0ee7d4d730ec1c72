/** Under what if: what is shown becomes the job's by one touch, and is taken back by another. */

import { html, nothing } from "../markup.js";
import { benchButton } from "../pieces/button.js";
import { say } from "../say.js";
import { answerIn } from "../supposed.js";

/** @param {import("../state").State} state */
export const ifBench = (state) => {
  const { desk } = state;
  if (!desk) return nothing;
  const busy = desk.waiting.length > 0;
  const shown = answerIn(state);
  const command = shown?.answer.command;
  if (!command && !desk.undo.length && !desk.redo.length) return nothing;
  return html`<div class="bench-buttons in-one-row if-bench">
    ${command
      ? html`<button type="button" class="chief-button if-do" data-act="if.do" ?disabled=${shown?.late}>${say("if.do")}</button>`
      : nothing}
    ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !desk.undo.length || busy })}
    ${benchButton("redo", say("do.redo"), "edit.redo", {}, { off: !desk.redo.length || busy })}
  </div>`;
};
