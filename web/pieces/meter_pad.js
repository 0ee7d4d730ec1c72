/** What an instrument shows, typed by one thumb: large figures above, keys below. */

import { html, live, nothing } from "../markup.js";
import { numerals, say, sayOne } from "../say.js";
import { glyph } from "./glyphs.js";

/** What is read in millions of ohms. */
const MEGOHMS = "earth_ohm";

const DIGITS = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0"];

/** @param {string} sign @param {string} [looks] @param {string} [name] for those who hear it */
const key = (sign, looks = "", name) => html`<button type="button" class="key ${looks}"
  data-act="meter.sign" data-sign=${sign} aria-label=${name ?? nothing}>${sign}</button>`;

/** @param {string} quantity */
const unitOf = (quantity) =>
  quantity === "volts" || quantity === "foreign_v" ? "V" : quantity === "amps" ? "A" : quantity.endsWith("ohm") ? "Ω" : "";

/** What an instrument shows instead of a number; typed and judged like one. */
const OVER_RANGE = say("meter.over_range");

/**
 * While the last reading is judged, that is said where it was typed, so that nothing moves.
 * @param {import("../meter_state").Entry} entry
 * @param {{enter: string}} acts the events it sends
 */
export const meterPad = ({ text, quantity }, { enter }, judging = false) => html`<form class="meter-entry" data-act=${enter} novalidate>
    <div class="meter-shown">
      <input id="meter-shows" type="text" inputmode="none" class="meter-shows" autocomplete="off" spellcheck="false"
        aria-label=${say("meter.entry")} placeholder=${sayOne("quantity", quantity)}
        .value=${live(text)} data-input="meter.type" />
      ${text && text !== OVER_RANGE ? html`<span class="meter-unit" aria-hidden="true">${unitOf(quantity)}</span>` : nothing}
      ${judging && !text ? html`<span class="meter-judging" aria-hidden="true">${say("meter.judging")}</span>` : nothing}
    </div>
    <button type="submit" class="chief-button" aria-disabled=${!text.trim()}>${say("meter.enter")}</button>
  </form>
  <div class="keys meter-keys ${quantity === MEGOHMS ? "meter-keys-more" : ""}">
    ${DIGITS.map((digit) => key(digit))} ${key(numerals.decimal, "meter-point", say("tally.point"))}
    ${key(say("meter.kilo"), "meter-kilo", say("meter.kilo_name"))}
    ${quantity === MEGOHMS ? key(say("meter.mega"), "meter-mega", say("meter.mega_name")) : nothing}
    <button type="button" class="key key-side meter-over" data-act="meter.over_range" aria-label=${say("meter.over_range_name")}
      ?disabled=${!quantity.endsWith("ohm") && quantity !== "foreign_v"}>${say("meter.over_range")}</button>
    <button type="button" class="key key-side meter-erase" data-act="meter.erase" aria-label=${say("tally.erase")}>
      ${glyph("erase")}
    </button>
  </div>`;
