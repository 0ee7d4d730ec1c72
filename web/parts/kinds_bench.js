/** Under the kinds: make one of one's own; and what can be done with the picked one. */

import { kindFace, pickedKind, pickOf } from "../kinds.js";
import { html, nothing } from "../markup.js";
import { benchButton, squareButton } from "../pieces/button.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Family} Family */

/** @type {Record<Family, string>} */
const FORMS = { loudspeakers: "own_loudspeaker", cables: "own_cable", attenuators: "own_attenuator" };

/** @param {State} state */
const plainBench = ({ desk }) => {
  const busy = !desk || desk.waiting.length > 0;
  return html`<div class="bench-buttons">
    ${benchButton("loudspeaker", say("kinds.own_loudspeaker"), "form.open", { form: "own_loudspeaker" }, { chief: true })}
    ${benchButton("junction", say("kinds.own_cable"), "form.open", { form: "own_cable" })}
    ${benchButton("attenuator", say("kinds.own_attenuator"), "form.open", { form: "own_attenuator" })}
    ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: busy || !desk.undo.length })}
    ${benchButton("redo", say("do.redo"), "edit.redo", {}, { off: busy || !desk.redo.length })}
  </div>`;
};

/** @param {State} state */
export const kindsBench = (state) => {
  const picked = pickedKind(state, state.bench?.is === "thing" ? state.bench.id : null);
  if (!picked) return plainBench(state);
  const { family, kind, own } = picked;
  const face = kindFace(state, family, kind.id);
  const thing = pickOf(family, kind.id);
  const form = FORMS[family];
  const stocked = state.catalogue.faces[family][kind.id];
  const differs = own && face?.differs && stocked;
  return html`<div class="bench-head">
      <div class="bench-title">
        <h2>${face?.title ?? kind.name}</h2>
        <p class="quiet">${own ? face?.used : say("kinds.stock")}</p>
      </div>
      ${squareButton("close", say("bench.close"), "bench.close")}
    </div>
    <div class="bench-buttons">
      ${own ? benchButton("change", say("form.change"), "form.open", { form, kind: kind.id, thing }) : nothing}
      ${differs ? benchButton("swap", say("kinds.take"), "kind.take", { family, id: kind.id }) : nothing}
      ${benchButton("copy", say("kinds.like"), "form.open", { form, like: kind.id, thing })}
      ${own
        ? benchButton("remove", say("kinds.drop"), "kind.drop", { family, id: kind.id }, { off: face?.in_use ?? true })
        : nothing}
    </div>
    ${differs ? html`<p class="quiet kinds-note">${say("kinds.differs", { lines: stocked.lines.join("; ") })}</p>` : nothing}
    ${own && face?.in_use ? html`<p class="quiet kinds-note">${say("kinds.in_use")}</p>` : nothing}`;
};
