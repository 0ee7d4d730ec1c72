/** Under a zone: hang things on its line, undo, and what concerns the zone itself. */

import { html, nothing } from "../markup.js";
import { benchButton } from "../pieces/button.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */

/** @param {State} state */
export const zoneBench = ({ desk, place }) => {
  const zones = desk?.job.zones ?? [];
  const at = zones.findIndex(({ id }) => id === place.zone);
  const zone = zones[at];
  if (!desk || !zone) return nothing;
  const { id } = zone;
  const busy = desk.waiting.length > 0;
  return html`<div class="bench-buttons">
    ${benchButton("loudspeaker", say("form.add_loudspeakers"), "form.open", { form: "add_loudspeakers", zone: id }, { chief: true })}
    ${benchButton("attenuator", say("form.add_attenuator"), "form.open", { form: "add_attenuator", zone: id })}
    ${benchButton("existing", say("form.add_existing"), "form.open", { form: "add_existing", zone: id })}
    ${benchButton("junction", say("form.add_junction"), "form.open", { form: "add_junction", zone: id })}
    ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !desk.undo.length || busy })}
    ${benchButton("redo", say("do.redo"), "edit.redo", {}, { off: !desk.redo.length || busy })}
    ${benchButton("change", say("form.change_zone"), "form.open", { form: "change_zone", zone: id })}
    ${benchButton("up", say("move.up"), "zone.move", { id, way: "up" }, { off: at === 0 })}
    ${benchButton("down", say("move.down"), "zone.move", { id, way: "down" }, { off: at === zones.length - 1 })}
    ${benchButton("remove", say("form.remove_zone"), "zone.remove", { id })}
  </div>`;
};
