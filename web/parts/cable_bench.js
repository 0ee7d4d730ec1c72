/** Under the choice of a cable: what was just put in can be taken back at once. */

import { html, nothing } from "../markup.js";
import { benchButton } from "../pieces/button.js";
import { say } from "../say.js";

/** @param {import("../state").State} state */
export const cableBench = ({ desk, place }) => {
  if (!desk) return nothing;
  const zone = desk.job.zones.find(({ id }) => id === place.zone);
  // Without lengths no cable can be chosen: then they are what one does first.
  const waits = zone?.line.some(({ length_m }) => typeof length_m !== "number");
  const busy = desk.waiting.length > 0;
  return html`<div class="bench-buttons">
    ${benchButton("length", say("form.set_lengths"), "form.open", { form: "set_lengths", zone: zone?.id }, { chief: waits, off: !zone?.line.length })}
    ${benchButton("add", say("kinds.own_cable"), "form.open", { form: "own_cable" })}
    ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !desk.undo.length || busy })}
    ${benchButton("redo", say("do.redo"), "edit.redo", {}, { off: !desk.redo.length || busy })}
  </div>`;
};
