/** At one loudspeaker, with one thumb: its taps, how they are known, its tick, and what to do with it. */

import { answerTo } from "../asked.js";
import { html, nothing } from "../markup.js";
import { benchButton, squareButton } from "../pieces/button.js";
import { shape } from "../pieces/mark.js";
import { beforeTouch } from "../pieces/caution.js";
import { numbersTable } from "../pieces/numbers.js";
import { reasonAt } from "../pieces/reason.js";
import { tapList } from "../pieces/tap_rows.js";
import { say, sayOne, together } from "../say.js";
import { adviceOf, tapsOf } from "../taps.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Desk} Desk */
/** @typedef {import("../state").Point} Point */
/** @typedef {import("../state").Zone} Zone */

const KNOWN = /** @type {const} */ (["drawing", "found", "set", "checked"]);

/**
 * The same watts of another row are not the same tap, so the row is said.
 * @param {import("../taps.js").Advice["neighbour"]} neighbour @param {number} row_v @param {boolean} here
 */
const neighbourWords = (neighbour, row_v, here) => {
  if (!neighbour?.row || neighbour.row_v === row_v) return here ? "" : say("point.as_neighbours");
  return say("point.neighbours_in_row", { row: neighbour.row });
};

/** @param {State} state @param {Zone} zone @param {Point} point */
const tapRows = (state, zone, { id, fitted }) => {
  const { preview, desk } = state;
  const options = preview?.point === id ? preview.options : {};
  const late = preview?.point === id && preview.rev !== desk?.job.rev;
  const advice = adviceOf(state, zone, id);
  const taps = tapsOf(state, zone, fitted).map(({ tap_w, at_v, row_v, shown }) => {
    const here = fitted.tap_w === tap_w && fitted.tap_at_v === at_v;
    const neighbour = tap_w === advice.neighbour?.tap_w;
    const notes = [
      here ? say("point.now") : "",
      neighbour ? neighbourWords(advice.neighbour, row_v, here) : "",
      tap_w === advice.largest ? say("point.largest") : "",
    ];
    const note = notes.filter(Boolean).join(" · ");
    return { point: id, tap_w, at_v, shown, here, note, neighbour, option: options[`${tap_w}`] };
  });
  // The neighbours' tap stays first even where it is taken, so that no row moves under a thumb.
  const first = taps.filter(({ neighbour }) => neighbour);
  return html`<div class="tap-rows ${late ? "late" : ""}" role="group" aria-label=${say("ladder.taps")}>
    ${tapList([...first, ...taps.filter((tap) => !first.includes(tap))])}
  </div>`;
};

/** @param {State} state @param {Point} point */
const knownAs = ({ line }, { id, fitted }) => html`<div
    class="segments"
    role="group"
    aria-label=${say("ladder.known")}
  >
    ${KNOWN.map(
      (each) => html`<button type="button" class="segment" data-act="ladder.known" data-point=${id}
        data-seen=${each} aria-pressed=${fitted.seen === each}>${sayOne("ladder", `known_${each}`)}</button>`,
    )}
  </div>
  <p class="known-means quiet">${say("ladder.known_means")}</p>
  ${line.turning ? html`<p class="known-means quiet">${sayOne("ladder", `turning_${line.turning}`)}</p>` : nothing}`;

/** @param {Desk} desk @param {string} id */
const tickOf = ({ job }, id) => job.ticks.find(({ point }) => point === id);

/** @param {Point} point */
const hasTap = ({ fitted }) =>
  typeof fitted.tap_w === "number" && typeof fitted.tap_at_v === "number";

/** Who ticks, or who did. @param {State} state @param {Desk} desk @param {Point} point */
const tickRow = ({ line }, desk, point) => {
  const tick = tickOf(desk, point.id);
  if (tick) {
    const { at, initials } = tick;
    return html`<p class="tick-row ticked">${shape("ok")}<span>${say("ladder.ticked", { at, initials })}</span></p>`;
  }
  if (!hasTap(point)) return html`<p class="quiet">${say("ladder.no_tap")}</p>`;
  return html`<div class="tick-row">
    <label for="initials">${say("ladder.initials")}</label>
    <input id="initials" type="text" maxlength="12" autocomplete="off" autocapitalize="characters"
      spellcheck="false" .value=${line.initials} data-input="ladder.initials" />
  </div>`;
};

/** @param {Desk} desk @param {Point} point */
const head = (desk, { id, fitted }) => {
  const face = desk.seen.faces.things[id];
  const { tap_w, planned_tap_w } = fitted;
  const planned = planned_tap_w === tap_w ? null : face?.fields?.planned_tap_w;
  return html`<div class="bench-head">
      <div class="bench-title">
        <h2>${face?.title || sayOne("fitted", fitted.is)}</h2>
        <p class="quiet">${face?.line}${planned ? html` · ${say("ladder.planned", { tap: together(planned) })}` : nothing}</p>
      </div>
      ${squareButton("close", say("bench.close"), "bench.close")}
    </div>
    ${reasonAt(desk, id)}`;
};

/** @param {Zone} zone @param {Point} point */
const beforeIt = (zone, { id, after }) => ({ zone: zone.id, after: after ?? "", ahead: id });

/** What one does most up a ladder: one row, above all else. @param {Desk} desk @param {Zone} zone @param {Point} point */
const firstButtons = (desk, zone, point) => {
  const { id } = point;
  const ticked = tickOf(desk, id);
  return html`<div class="bench-buttons in-one-row">
    ${benchButton("loudspeaker", say("ladder.after"), "form.open", { form: "add_loudspeakers", zone: zone.id, after: id })}
    ${benchButton("loudspeaker", say("ladder.before"), "form.open", { form: "add_loudspeakers", ...beforeIt(zone, point) })}
    ${ticked
      ? benchButton("undo", say("ladder.untick"), "ladder.untick", { point: id })
      : benchButton("ticked", say("ladder.tick"), "ladder.tick", { point: id }, { off: !hasTap(point) })}
    ${benchButton("swap", say("ladder.swap"), "ladder.swap_open", { point: id })}
    ${benchButton("remove", say("form.remove"), "point.remove", { point: id })}
  </div>`;
};

/** @param {Desk} desk @param {Zone} zone @param {Point} point */
const otherButtons = (desk, zone, point) => {
  const { id, fitted } = point;
  const connect = fitted.connected ? "disconnect" : "connect";
  return html`<div class="bench-buttons">
    ${benchButton("attenuator", say("ladder.control"), "form.open", { form: "put_attenuator", ...beforeIt(zone, point) })}
    ${benchButton("connect", sayOne("do", connect), `point.${connect}`, { point: id })}
    ${benchButton("tally", say("form.set_tap"), "form.open", { form: "set_tap", thing: id })}
    ${benchButton("change", say("form.change"), "form.open", { form: "change_point", thing: id })}
    ${benchButton("move", say("form.move"), "form.open", { form: "move_point", thing: id, zone: zone.id })}
    ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !desk.undo.length || desk.waiting.length > 0 })}
  </div>`;
};

/** @param {State} state @param {Zone} zone @param {Point} point */
export const ladderBench = (state, zone, point) => {
  const { desk, place } = state;
  if (!desk) return nothing;
  const numbers = numbersTable(answerTo(state, "numbers"), zone, point);
  const drawn = place.view === "drawing";
  return html`${head(desk, point)} ${firstButtons(desk, zone, point)} ${drawn ? numbers : nothing}
    ${tapRows(state, zone, point)} ${knownAs(state, point)} ${tickRow(state, desk, point)} ${beforeTouch()}
    ${otherButtons(desk, zone, point)}
    <p class="point-whole quiet">${desk.seen.faces.things[point.id]?.detail}</p>
    ${drawn ? nothing : numbers}`;
};
