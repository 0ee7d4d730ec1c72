/** Under a picked point that is no loudspeaker: what can be done with it, what arrives there. */

import { answerTo } from "../asked.js";
import { html, nothing } from "../markup.js";
import { benchButton, squareButton } from "../pieces/button.js";
import { beforeTouch } from "../pieces/caution.js";
import { numbersTable } from "../pieces/numbers.js";
import { reasonAt } from "../pieces/reason.js";
import { say, sayOne } from "../say.js";
import { belowOf } from "../tree.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Desk} Desk */
/** @typedef {import("../state").Point} Point */
/** @typedef {import("../state").Zone} Zone */

/** @param {Point} point */
const fittedButtons = ({ id, fitted }) => {
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
    ${reasonAt(desk, id)}`;
};

/** @param {State} state @param {Zone} zone @param {Point} point */
export const pointBench = (state, zone, point) => {
  const { desk } = state;
  if (!desk) return nothing;
  const { id } = point;
  const before = { zone: zone.id, after: point.after ?? "", ahead: id };
  return html`${head(desk, point)}
    <div class="bench-buttons">
      ${fittedButtons(point)}
      ${benchButton("loudspeaker", say("ladder.after"), "form.open", { form: "add_loudspeakers", zone: zone.id, after: id })}
      ${benchButton("loudspeaker", say("ladder.before"), "form.open", { form: "add_loudspeakers", ...before })}
      ${benchButton("attenuator", say("ladder.control"), "form.open", { form: "put_attenuator", ...before })}
      ${benchButton("change", say("form.change"), "form.open", { form: "change_point", thing: id })}
      ${benchButton("move", say("form.move"), "form.open", { form: "move_point", thing: id, zone: zone.id })}
      ${benchButton("remove", say("form.remove"), "point.remove", { point: id })}
      ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !desk.undo.length || desk.waiting.length > 0 })}
    </div>
    ${beforeTouch()} ${numbersTable(answerTo(state, "numbers"), zone, point)}`;
};

/** So many are named one by one. */
const MOST_NAMED = 4;

/** Who would be heard no more. @param {Desk} desk @param {string} id */
const silent = ({ job, seen }, id) => {
  const line = job.zones.map((zone) => zone.line).find((each) => each.some((point) => point.id === id));
  const heard = belowOf(line ?? [], id).filter(({ fitted }) => fitted.is === "loudspeaker");
  const names = heard.map((point) => seen.faces.things[point.id]?.title || sayOne("fitted", point.fitted.is));
  const rest = names.length - MOST_NAMED;
  if (rest <= 0) return names.join(", ");
  return [...names.slice(0, MOST_NAMED), say("ladder.silent_more", { n: String(rest) })].join(", ");
};

/** Removing in mid-run: join the line through, or cut off what hangs behind. @param {Desk} desk @param {string} point */
export const sureBench = (desk, point) => {
  const list = silent(desk, point);
  return html`<div class="bench-head">
    <h2>${say("remove.title", { title: desk.seen.faces.things[point]?.title ?? "" })}</h2>
    ${squareButton("close", say("bench.close"), "bench.close")}
  </div>
  <p>${say("remove.why")}</p>
  ${list ? html`<p class="silent">${say("ladder.silent", { list })}</p>` : nothing}
  <div class="bench-row">
    <button type="button" class="plain-button" data-act="point.remove_so" data-point=${point} data-tail="join">
      ${say("remove.join")}
    </button>
    <button type="button" class="plain-button" data-act="point.remove_so" data-point=${point} data-tail="cut">
      ${say("remove.cut")}
    </button>
  </div>`;
};
