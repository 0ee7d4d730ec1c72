/** The meter's lower half, for one thumb: where and what, then what the instrument shows. */

import { html, live, nothing } from "../markup.js";
import { meteredZone, placeOf } from "../meter_first.js";
import { glyph } from "../pieces/glyphs.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../meter_state").Entry} Entry */

const QUANTITIES = /** @type {const} */ (["z_1k_ohm", "dc_ohm", "earth_ohm", "volts", "amps", "plays"]);
const CONTROLS = /** @type {const} */ (["open", "set", "override"]);
const HEARD = /** @type {const} */ (["well", "weak", "silent", "loud", "distorted"]);
const UPPER = ["1", "2", "3", "4", "5"];
const LOWER = ["6", "7", "8", "9", "0"];

/**
 * @param {string} act @param {string} name
 * @param {{value: string, words: string}[]} choices @param {string} now
 */
const pick = (act, name, choices, now) => html`<div class="meter-pick">
  <label for=${act}>${name}</label>
  <select id=${act} data-input=${act}>
    ${choices.map(
      ({ value, words }) =>
        html`<option value=${value} .selected=${live(value === now)}>${words}</option>`,
    )}
  </select>
</div>`;

/** Every place of the line an instrument can be put to. @param {State} state */
const placesOf = (state) => {
  const zone = meteredZone(state);
  const things = state.desk?.seen.faces.things ?? {};
  if (!zone) return [];
  const points = zone.line.map(({ id }) => ({
    value: `point:${id}`,
    words: say("meter.at_point", { name: things[id]?.title ?? id }),
  }));
  const output = zone.output
    ? [{ value: `output:${zone.output}`, words: say("meter.at_output") }]
    : [];
  const head = { value: `zone:${zone.id}`, words: say("meter.at_zone") };
  return [head, ...output, ...points];
};

/** Which way it looks and what is lifted, where that is not the plain way. @param {State} state */
const howLine = ({ meter: { entry }, desk }) => {
  if (entry.looking === "out" && !entry.lifted.length) return nothing;
  const names = entry.lifted.map((id) => desk?.seen.faces.things[id]?.title ?? id).join(", ");
  const lifted = names ? say("meter.lifted", { names }) : "";
  return html`<p class="meter-how">${sayOne("looking", entry.looking)}. ${lifted}</p>`;
};

/** @param {string} sign */
const key = (sign) =>
  html`<button type="button" class="key" data-act="meter.sign" data-sign=${sign}>${sign}</button>`;

/** @param {Entry} entry */
const pad = ({ text, quantity }) => html`<form class="meter-entry" data-act="meter.enter" novalidate>
    <input type="text" inputmode="none" class="meter-shows" autocomplete="off" spellcheck="false"
      aria-label=${say("meter.entry")} placeholder=${sayOne("quantity", quantity)}
      .value=${live(text)} data-input="meter.type" />
    <button type="submit" class="chief-button" ?disabled=${!text.trim()}>${say("meter.enter")}</button>
  </form>
  <div class="keys meter-keys">
    ${UPPER.map(key)} ${key(".")}
    <button type="button" class="key key-side" data-act="meter.erase" aria-label=${say("tally.erase")}>
      ${glyph("erase")}
    </button>
    ${LOWER.map(key)} ${key(say("meter.kilo"))}
    <button type="button" class="key key-side" data-act="meter.over_range"
      ?disabled=${!quantity.endsWith("ohm")}>${say("meter.over_range")}</button>
  </div>`;

const heardPad = () => html`<div class="taps" role="group" aria-label=${sayOne("quantity", "plays")}>
  ${HEARD.map(
    (each) => html`<button type="button" class="chip" data-act="meter.heard" data-heard=${each}>
      ${sayOne("plays", each)}
    </button>`,
  )}
</div>`;

/** @param {State} state */
export const meterBench = (state) => {
  const zone = meteredZone(state);
  if (!zone) return nothing;
  const { entry } = state.meter;
  const quantities = QUANTITIES.map((value) => ({ value, words: sayOne("quantity", value) }));
  const controls = CONTROLS.map((value) => ({ value, words: sayOne("controls", value) }));
  const hasControls = zone.line.some(({ fitted }) => fitted.is === "attenuator");
  return html`<div class="meter-picks">
      ${pick("meter.place", say("meter.place"), placesOf(state), placeOf(state))}
      ${pick("meter.quantity", say("meter.what"), quantities, entry.quantity)}
      ${hasControls ? pick("meter.controls", say("meter.controls"), controls, entry.controls) : nothing}
    </div>
    ${howLine(state)} ${entry.quantity === "plays" ? heardPad() : pad(entry)}`;
};
