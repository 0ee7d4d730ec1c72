/** Under what if: what is shown becomes the job's by one touch, and is taken back by another. */

import { isOfNow } from "../if_now.js";
import { html, nothing } from "../markup.js";
import { benchButton } from "../pieces/button.js";
import { say } from "../say.js";

/** @param {import("../state").State} state */
export const ifBench = (state) => {
  const { desk, line } = state;
  if (!desk) return nothing;
  const busy = desk.waiting.length > 0;
  const shown = isOfNow(state) ? line.what_if.answer : null;
  if (!shown?.command && !desk.undo.length && !desk.redo.length) return nothing;
  return html`<div class="bench-buttons in-one-row if-bench">
    ${shown?.command
      ? html`<button type="button" class="chief-button if-do" data-act="if.do">${say("if.do")}</button>`
      : nothing}
    ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !desk.undo.length || busy })}
    ${benchButton("redo", say("do.redo"), "edit.redo", {}, { off: !desk.redo.length || busy })}
  </div>`;
};
