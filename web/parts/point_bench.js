/** Under a picked point: its taps first, then what else can be done with it. */

import { html, nothing } from "../markup.js";
import { benchButton, squareButton } from "../pieces/button.js";
import { shape, verdictShape } from "../pieces/mark.js";
import { say, sayOne } from "../say.js";
import { adviceOf, tapsOf } from "../taps.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Desk} Desk */
/** @typedef {import("../state").Point} Point */
/** @typedef {import("../state").Zone} Zone */

/**
 * What stands under a tap: where it stands now, what is advised, else the load it would make.
 * @param {{tap_w: number, here: boolean, advice: import("../taps.js").Advice,
 *   load: import("../state").PreviewOption["loads"][number] | undefined}} tap
 */
const tapNote = ({ tap_w, here, advice, load }) => {
  if (here) return say("point.now");
  if (tap_w === advice.neighbour) return say("point.as_neighbours");
  if (tap_w === advice.largest) return say("point.largest");
  return load ? say("point.makes", { load: load.shown_after }) : "";
};

/** @param {State} state @param {Zone} zone @param {Point} point */
const tapChips = (state, zone, { id, fitted }) => {
  const { preview } = state;
  const options = preview?.point === id ? preview.options : {};
  const advice = adviceOf(state, zone, id);
  return html`<div class="taps turns" role="group" aria-label=${say("point.taps")}>
    ${tapsOf(state, zone, fitted).map(({ tap_w, at_v, shown }) => {
      const here = fitted.tap_w === tap_w && fitted.tap_at_v === at_v;
      const option = here ? undefined : options[`${tap_w}`];
      const [load] = option?.loads ?? [];
      return html`<button type="button" class="chip" data-act="point.tap" data-point=${id}
        data-tap=${tap_w} data-at=${at_v} aria-pressed=${here}>
        <span>${shown} ${option && load ? verdictShape(option.verdict) : nothing}</span>
        <small>${tapNote({ tap_w, here, load, advice })}</small>
      </button>`;
    })}
  </div>`;
};

/** @param {Point} point */
const fittedButtons = ({ id, fitted }) => {
  if (fitted.is === "loudspeaker") {
    return fitted.connected
      ? benchButton("connect", say("do.disconnect"), "point.disconnect", { point: id })
      : benchButton("connect", say("do.connect"), "point.connect", { point: id });
  }
  if (fitted.is !== "attenuator") return nothing;
  return html`
    ${benchButton("attenuator", say("form.set_attenuator"), "form.open", { form: "set_attenuator", thing: id })}
    ${fitted.off
      ? benchButton("on", say("point.on"), "point.off", { point: id, off: "no" })
      : benchButton("close", say("point.off"), "point.off", { point: id, off: "yes" })}
  `;
};

/** @param {Desk} desk @param {Point} point */
const head = (desk, { id, fitted }) => {
  const face = desk.seen.faces.things[id];
  return html`<div class="bench-head">
      <h2>${face?.title || sayOne("fitted", fitted.is)}</h2>
      <p class="quiet">${face?.line}</p>
      ${squareButton("close", say("bench.close"), "bench.close")}
    </div>
    ${face?.reason ? html`<p class="bench-reason v-${face.verdict}">${shape(face.verdict ?? "note")}<span>${face.reason}</span></p>` : nothing}`;
};

/** @param {State} state @param {Zone} zone @param {Point} point */
export const pointBench = (state, zone, point) => {
  const { desk } = state;
  if (!desk) return nothing;
  const { id } = point;
  return html`${head(desk, point)}
    ${point.fitted.is === "loudspeaker" ? tapChips(state, zone, point) : nothing}
    <div class="bench-buttons">
      ${benchButton("loudspeaker", say("point.add_behind"), "form.open", { form: "add_loudspeakers", zone: zone.id, after: id })}
      ${benchButton("attenuator", say("point.add_attenuator"), "form.open", { form: "add_attenuator", zone: zone.id, after: id })}
      ${fittedButtons(point)}
      ${point.fitted.is === "loudspeaker"
        ? benchButton("tally", say("form.set_tap"), "form.open", { form: "set_tap", thing: id })
        : nothing}
      ${benchButton("change", say("form.change"), "form.open", { form: "change_point", thing: id })}
      ${benchButton("move", say("form.move"), "form.open", { form: "move_point", thing: id, zone: zone.id })}
      ${benchButton("remove", say("form.remove"), "point.remove", { point: id })}
      ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !desk.undo.length || desk.waiting.length > 0 })}
    </div>`;
};

/** Removing in mid-run: join the line through, or cut off what hangs behind. @param {string} point @param {string} title */
export const sureBench = (point, title) => html`<div class="bench-head">
    <h2>${say("remove.title", { title })}</h2>
    ${squareButton("close", say("bench.close"), "bench.close")}
  </div>
  <p>${say("remove.why")}</p>
  <div class="bench-row">
    <button type="button" class="plain-button" data-act="point.remove_so" data-point=${point} data-tail="join">
      ${say("remove.join")}
    </button>
    <button type="button" class="plain-button" data-act="point.remove_so" data-point=${point} data-tail="cut">
      ${say("remove.cut")}
    </button>
  </div>`;
