/** Under the choice of a cable: what was just put in can be taken back at once. */

import { html, nothing } from "../markup.js";
import { benchButton } from "../pieces/button.js";
import { say } from "../say.js";

/** @param {import("../state").State} state */
export const cableBench = ({ desk }) => {
  if (!desk) return nothing;
  const busy = desk.waiting.length > 0;
  return html`<div class="bench-buttons">
    ${benchButton("add", say("kinds.own_cable"), "form.open", { form: "own_cable" })}
    ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !desk.undo.length || busy })}
    ${benchButton("redo", say("do.redo"), "edit.redo", {}, { off: !desk.redo.length || busy })}
  </div>`;
};
