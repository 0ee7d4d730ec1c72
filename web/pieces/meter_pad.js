/** What an instrument shows, typed by one thumb: large figures above, keys below. */

import { html, live, nothing } from "../markup.js";
import { say, sayOne } from "../say.js";
import { glyph } from "./glyphs.js";

const UPPER = ["1", "2", "3", "4", "5"];
const LOWER = ["6", "7", "8", "9", "0"];

/** @param {string} sign */
const key = (sign) =>
  html`<button type="button" class="key" data-act="meter.sign" data-sign=${sign}>${sign}</button>`;

/** @param {string} quantity */
const unitOf = (quantity) =>
  quantity === "volts" || quantity === "foreign_v" ? "V" : quantity === "amps" ? "A" : quantity.endsWith("ohm") ? "Ω" : "";

/**
 * @param {import("../meter_state").Entry} entry
 * @param {{enter: string, over: string}} acts the events it sends
 */
export const meterPad = ({ text, quantity }, { enter, over }) => html`<form class="meter-entry" data-act=${enter} novalidate>
    <div class="meter-shown">
      <input type="text" inputmode="none" class="meter-shows" autocomplete="off" spellcheck="false"
        aria-label=${say("meter.entry")} placeholder=${sayOne("quantity", quantity)}
        .value=${live(text)} data-input="meter.type" />
      ${text ? html`<span class="meter-unit" aria-hidden="true">${unitOf(quantity)}</span>` : nothing}
    </div>
    <button type="submit" class="chief-button" ?disabled=${!text.trim()}>${say("meter.enter")}</button>
  </form>
  <div class="keys meter-keys">
    ${UPPER.map(key)} ${key(".")}
    <button type="button" class="key key-side" data-act="meter.erase" aria-label=${say("tally.erase")}>
      ${glyph("erase")}
    </button>
    ${LOWER.map(key)} ${key(say("meter.kilo"))}
    <button type="button" class="key key-side" data-act=${over}
      ?disabled=${!quantity.endsWith("ohm") && quantity !== "foreign_v"}>${say("meter.over_range")}</button>
  </div>`;
