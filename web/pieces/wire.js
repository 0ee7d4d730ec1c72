/**
 * The wire of a drawing: sections, what hangs on them, and leaders to the rows beside it.
 * Places come ready from the core, in rows and lanes; here they become units of the picture.
 */

import { html, nothing, svg } from "../markup.js";

/** @typedef {import("../line_state").Drawing} Drawing */
/** @typedef {import("../line_state").DrawnPoint} DrawnPoint */

const RULER = 34;
const FIRST_LANE = 14;
const WIDEST_LANE = 22;
const ALL_LANES = 132;
const LEADER = 22;
/** How much of the dot is filled, by tone. */
const FILLED = [0, 1.5, 3, 4.5, 6, 6];
/** A part of this much of a row, above and below, may still reach into a block. */
const REACH = 1;

/** @param {Drawing} drawing @param {number} tall */
export const measure = ({ lanes, ticks }, tall) => {
  const left = (ticks.length ? RULER : 0) + FIRST_LANE;
  const pitch = Math.min(WIDEST_LANE, ALL_LANES / lanes);
  const right = left + pitch * (lanes - 1) + FIRST_LANE;
  return {
    x: (/** @type {number} */ lane) => left + pitch * lane,
    y: (/** @type {number} */ row) => tall * row,
    right,
    wide: right + LEADER,
  };
};

/** @typedef {ReturnType<typeof measure>} Measure */

/** @param {Measure} to @param {DrawnPoint} point */
const section = (to, { from_x, from_y, x, y, known, tone, costliest }) => {
  const path = `M${to.x(from_x)} ${to.y(from_y)}H${to.x(x)}V${to.y(y)}`;
  const middle = to.y((from_y + y) / 2);
  return svg`
    ${costliest ? svg`<path class="wire-costly" d=${path} />` : nothing}
    <path class="wire tone-${tone} ${known ? "" : "guessed"}" d=${path} />
    ${known
      ? nothing
      : svg`<g transform="translate(${to.x(x)} ${middle})"
          ><circle class="wire-gap" r="8" /><text class="wire-asks" text-anchor="middle" dy="4.5">?</text></g>`}`;
};

/** @param {Measure} to @param {DrawnPoint} point */
const leader = (to, { x, y, row }) => {
  const [from, at] = [to.y(y), to.y(row + 0.5)];
  return svg`<path class="leader" d=${`M${to.x(x) + 8} ${from}H${to.right}L${to.wide} ${at}`} />`;
};

/** @param {DrawnPoint} point */
const dot = ({ drawn_as, tone, worst }) => {
  if (drawn_as.startsWith("attenuator")) {
    return svg`<circle class="hung" r="8" /><path class="hung-mark" d="M0 0 4.2 -5" />
      ${drawn_as.endsWith("off") ? svg`<path class="hung-off" d="M-9 9 9 -9" />` : nothing}`;
  }
  if (drawn_as === "junction") return svg`<circle class="hung-box" r="4.5" />`;
  if (drawn_as === "existing") return svg`<rect class="hung part" x="-7" y="-7" width="14" height="14" />`;
  if (drawn_as.endsWith("off")) {
    return svg`<circle class="hung away" r="7" /><path class="hung-off" d="M-8 8 8 -8" />`;
  }
  return svg`${worst ? svg`<circle class="hung-worst" r="11" />` : nothing}
    <circle class="hung" r="7" /><circle class="hung-core tone-${tone}" r=${FILLED[tone] ?? 0} />`;
};

/** @param {Measure} to @param {DrawnPoint} point */
const hung = (to, point) => svg`<g transform="translate(${to.x(point.x)} ${to.y(point.y)})"
  >${point.far ? svg`<path class="hung-end" d="M-9 13H9" />` : nothing}${dot(point)}</g>`;

/** @param {Measure} to @param {Drawing["ticks"]} ticks */
const ruler = (to, ticks) => ticks.map(
  ({ y, words }) => svg`<g transform="translate(0 ${to.y(y)})"
    ><path class="ruler" d="M0 0H8" /><text class="ruler-words" x="2" dy="-4">${words}</text></g>`,
);

/**
 * The part of the picture that lies beside the rows from `first` on.
 * @param {Drawing} drawing @param {number} first @param {number} count @param {number} tall how tall a row is
 */
export const wire = (drawing, first, count, tall) => {
  const to = measure(drawing, tall);
  const [top, bottom] = [first - REACH, first + count + REACH];
  const meets = (/** @type {number} */ from, /** @type {number} */ end) =>
    Math.max(from, end) >= top && Math.min(from, end) <= bottom;
  const parts = drawing.points.filter(({ from_y, y, row }) => meets(from_y, Math.max(y, row)));
  const here = parts.filter(({ y, row }) => meets(y, row));
  return html`<svg
    class="wire-part"
    viewBox="0 ${to.y(first)} ${to.wide} ${to.y(count)}"
    width="${to.wide / 16}rem"
    height="${(tall * count) / 16}rem"
    aria-hidden="true"
  >
    ${ruler(to, drawing.ticks.filter(({ y }) => meets(y, y)))}
    ${here.map((point) => leader(to, point))}
    ${parts.map((point) => section(to, point))}
    ${first === 0
      ? svg`<rect class="wire-start" x=${to.x(0) - 8} y=${to.y(0.5) - 6} width="16" height="12" rx="2" />`
      : nothing}
    ${here.map((point) => hung(to, point))}
  </svg>`;
};
