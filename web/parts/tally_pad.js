/** The tally's lower half, for one thumb: a count, then one touch on a tap. */

import { html, nothing } from "../markup.js";
import { glyph } from "../pieces/glyphs.js";
import { problemAt, wattsField } from "../pieces/watts_field.js";
import { numerals, say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Tally} Tally */

const UPPER = ["1", "2", "3", "4", "5"];
const LOWER = ["6", "7", "8", "9", "0"];

/** @param {State} state */
const usualTaps = ({ tally, catalogue }) => {
  const line = catalogue.line_volts.find(({ shown }) => shown === tally.line_v);
  return catalogue.usual_taps.find(({ line_v }) => line_v === line?.line_v)?.taps ?? [];
};

/** @param {string} digit */
const digitKey = (digit) =>
  html`<button type="button" class="key" data-act="tally.digit" data-digit=${digit}>${digit}</button>`;

/** @param {Pick<Tally, "count" | "other">} entry */
const entryWords = ({ count, other }) => {
  if (other !== null) return say("tally.entry_other", { count: count || "1", text: other || "…" });
  return say("tally.entry", { count });
};

/** The newest row, where the thumb has just been, and what still fits: a touch shows all of it. @param {Tally} tally */
const newest = ({ rows, answer }) => {
  const row = rows.at(-1);
  if (!row) return html`<p class="entry-hint">${say("tally.count_first")}</p>`;
  const words = html`<b>${say("tally.row", { count: row.count, tap: row.shown_tap })}</b>`;
  const fits = answer?.summary?.fits ?? [];
  if (!fits.length) return html`<p class="entry-hint">${words}</p>`;
  const isFull = fits.every(({ with_reserve, to_rating }) => with_reserve === 0 && to_rating === 0);
  const list = fits.map((each) => each.words).join(", ");
  // what is left out at the end of a line that is full must not be that the reserve is gone
  const line = fits[0]?.with_reserve ? say("tally.fits_line", { list }) : list;
  return html`<button type="button" class="fits" data-act="tally.fits">
    ${words}<span class="fits-line">${isFull ? say("tally.fits_nothing") : line}</span>
  </button>`;
};

/** @param {Tally} tally */
const entry = (tally) => {
  const { count, other, rows } = tally;
  return html`<div class="entry">
    ${other === null && !count
      ? newest(tally)
      : html`<p class="entry-count" role="status">${entryWords({ count, other })}</p>`}
    ${other !== null
      ? html`<button type="button" class="chief-button" data-act="tally.other_add" ?disabled=${!other}>
          ${say("tally.other_add")}
        </button>`
      : count
        ? html`<p class="entry-hint">${say("tally.pick_tap")}</p>`
        : rows.length
          ? html`<button type="button" class="chief-button" data-act="tally.keep">${say("tally.keep")}</button>`
          : nothing}
  </div>`;
};

/** @param {number} index */
const outputName = (index) => say(/** @type {any} */ (`tally.output_${index}`));

/** An output to put the next row on, with its maximum. @param {Tally} tally @param {number} index */
const outputChip = (tally, index) => {
  const { max_w = "" } = tally.outputs[index] ?? {};
  const shown = /\d$/.test(max_w) ? say("tally.typed_tap", { text: max_w }) : max_w;
  return html`<button type="button" class="chip ${problemAt(tally, `outputs.${index}.max_w`) ? "has-problem" : ""}"
    data-act="tally.output_pick" data-index=${index} aria-pressed=${index === tally.output}
    ><b>${outputName(index)}</b> <small>${shown}</small></button>`;
};

/** Where the next row goes, and the maximum of that output: one field, so that rows have room. @param {Tally} tally */
const outputPick = (tally) => {
  const { outputs, output } = tally;
  const now = outputs[output];
  if (!now) return nothing;
  return html`<div class="output-pick">
    <div class="output-chips" role="group" aria-label=${say("tally.output_pick")}>
      ${outputs.map((_, index) => outputChip(tally, index))}
    </div>
    ${wattsField({
      field: "max_w",
      words: say("tally.output_max", { name: outputName(output) }),
      value: now.max_w,
      problem: problemAt(tally, `outputs.${output}.max_w`),
      index: String(output),
    })}
  </div>`;
};

/** @param {State} state */
const taps = (state) => {
  const list = usualTaps(state);
  if (!list.length) return html`<p class="taps taps-none">${say("tally.volts_first")}</p>`;
  return html`<div class="taps" role="group" aria-label=${say("tally.taps")}>
    ${list.map(
      ({ shown }) => html`<button type="button" class="chip" data-act="tally.tap"
        data-tap=${shown} data-shown=${shown}>${shown}</button>`,
    )}
  </div>`;
};

/** @param {Tally} tally */
const keys = ({ other }) => html`<div class="keys">
  ${UPPER.map(digitKey)}
  <button type="button" class="key key-side" data-act="tally.erase" aria-label=${say("tally.erase")}>
    ${glyph("erase")}
  </button>
  ${LOWER.map(digitKey)}
  ${other === null
    ? html`<button type="button" class="key key-side" data-act="tally.other">${say("tally.other")}</button>`
    : html`<button type="button" class="key key-side" data-act="tally.digit" data-digit=${numerals.decimal}
        aria-label=${say("tally.point")}>${numerals.decimal}</button>`}
</div>`;

/** @param {State} state */
export const tallyPad = (state) => html`
  ${entry(state.tally)} ${outputPick(state.tally)} ${taps(state)} ${keys(state.tally)}
`;
