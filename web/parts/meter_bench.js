/** The meter's lower half, for one thumb: where and what, then what the instrument shows. */

import { html, live, nothing } from "../markup.js";
import { lineOf, meteredZone, placeOf, stoodOf, titleOf } from "../meter_first.js";
import { heardBrush } from "../pieces/heard.js";
import { meterPad } from "../pieces/meter_pad.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */

const QUANTITIES = /** @type {const} */ (["z_1k_ohm", "dc_ohm", "earth_ohm", "volts", "amps", "foreign_v", "plays"]);
const CONTROLS = /** @type {const} */ (["open", "set", "override"]);
const ACTS = { enter: "meter.enter" };

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
  if (!zone) return [];
  const points = zone.line.map(({ id }) => ({
    value: `point:${id}`,
    words: say("meter.at_point", { name: titleOf(state, id) }),
  }));
  const output = zone.output
    ? [{ value: `output:${zone.output}`, words: say("meter.at_output") }]
    : [];
  const head = { value: `zone:${zone.id}`, words: say("meter.at_zone") };
  return [head, ...output, ...points];
};

/** Which way it looks and what is lifted, where that is not the plain way. @param {State} state */
const howLine = (state) => {
  const { looking, lifted } = stoodOf(state);
  if (state.meter.entry.quantity === "plays") return nothing;
  if (looking === "out" && !lifted.length) return nothing;
  const names = lifted.map((id) => titleOf(state, id)).join(", ");
  return html`<p class="meter-how">${sayOne("looking", looking)}. ${names ? say("meter.lifted", { names }) : ""}</p>`;
};

/** @param {State} state */
export const meterBench = (state) => {
  const zone = meteredZone(state);
  if (!zone) return nothing;
  const { entry } = state.meter;
  const quantities = QUANTITIES.map((value) => ({ value, words: sayOne("quantity", value) }));
  const can = state.meter.expected?.of === lineOf(state) ? state.meter.expected.answer.controls : CONTROLS;
  const stances = CONTROLS.filter((one) => can.includes(one) || one === entry.controls);
  const controls = stances.map((value) => ({ value, words: sayOne("controls", value) }));
  const hasControls = zone.line.some(({ fitted }) => fitted.is === "attenuator");
  const listens = entry.quantity === "plays";
  return html`<div class="meter-picks">
      ${listens ? nothing : pick("meter.place", say("meter.place"), placesOf(state), placeOf(state))}
      ${pick("meter.quantity", say("meter.what"), quantities, entry.quantity)}
      ${hasControls && !listens
        ? pick("meter.controls", say("meter.controls"), controls, entry.controls)
        : nothing}
    </div>
    ${howLine(state)} ${listens ? heardBrush(state) : meterPad(entry, ACTS, state.meter.judging)}`;
};
