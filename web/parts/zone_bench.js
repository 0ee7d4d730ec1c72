/** Under a zone: hang things on its line, undo, and what concerns the zone itself. */

import { html, nothing } from "../markup.js";
import { benchButton, squareButton } from "../pieces/button.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Desk} Desk */
/** @typedef {import("../state").Zone} Zone */

/** @param {Desk} desk @param {Zone} zone */
const lineBench = (desk, { id }) => {
  const busy = desk.waiting.length > 0;
  const zone = { zone: id };
  return html`<div class="bench-buttons">
    ${benchButton("loudspeaker", say("form.add_loudspeakers"), "form.open", { form: "add_loudspeakers", ...zone }, { chief: true })}
    ${benchButton("attenuator", say("form.add_attenuator"), "form.open", { form: "add_attenuator", ...zone })}
    ${benchButton("existing", say("form.add_existing"), "form.open", { form: "add_existing", ...zone })}
    ${benchButton("junction", say("form.add_junction"), "form.open", { form: "add_junction", ...zone })}
    ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !desk.undo.length || busy })}
    ${benchButton("redo", say("do.redo"), "edit.redo", {}, { off: !desk.redo.length || busy })}
    ${benchButton("more", say("zone.more"), "thing.pick", { id })}
  </div>`;
};

/** Beside a drawing only what one needs most, in one row: the drawing needs the room. @param {Desk} desk @param {Zone} zone */
const drawingBench = (desk, { id }) => {
  const busy = desk.waiting.length > 0;
  return html`<div class="bench-buttons in-one-row drawing-bench">
    ${benchButton("loudspeaker", say("form.add_loudspeakers"), "form.open", { form: "add_loudspeakers", zone: id })}
    ${benchButton("attenuator", say("form.add_attenuator"), "form.open", { form: "add_attenuator", zone: id })}
    ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !desk.undo.length || busy })}
    ${benchButton("redo", say("do.redo"), "edit.redo", {}, { off: !desk.redo.length || busy })}
    ${benchButton("more", say("zone.more"), "thing.pick", { id })}
  </div>`;
};

/** @param {Desk} desk @param {Zone} zone */
const ownBench = ({ job: { zones } }, zone) => {
  const { id, name } = zone;
  const at = zones.indexOf(zone);
  return html`<div class="bench-head">
      <h2>${name}</h2>
      ${squareButton("close", say("bench.close"), "bench.close")}
    </div>
    <div class="bench-buttons">
      ${benchButton("change", say("form.change_zone"), "form.open", { form: "change_zone", zone: id, thing: id })}
      ${benchButton("length", say("form.set_lengths"), "form.open", { form: "set_lengths", zone: id }, { off: !zone.line.length })}
      ${benchButton("up", say("move.up"), "zone.move", { id, way: "up" }, { off: at === 0 })}
      ${benchButton("down", say("move.down"), "zone.move", { id, way: "down" }, { off: at === zones.length - 1 })}
      ${benchButton("remove", say("form.remove_zone"), "zone.remove", { id })}
    </div>`;
};

/** @param {State} state */
export const zoneBench = ({ desk, place, bench }) => {
  const zone = desk?.job.zones.find(({ id }) => id === place.zone);
  if (!desk || !zone) return nothing;
  if (bench?.is === "thing" && bench.id === zone.id) return ownBench(desk, zone);
  return place.view === "drawing" ? drawingBench(desk, zone) : lineBench(desk, zone);
};
