/**
 * The line as a strip across the page, the amplifier on the left, with marks on it: a point, or a
 * stretch of the wire with how far it may be off. Places come ready from the core.
 */

import { html, nothing, svg } from "../markup.js";

/** @typedef {import("../line_state").Drawing} Drawing */
/** @typedef {import("../line_state").DrawnPoint} DrawnPoint */

/**
 * A mark. Without a share it is at the point itself; with one, so far along the section before it.
 * @typedef {{point: string | null, share?: number, from?: number, to?: number}} Mark
 */

const WIDE = 320;
const LANE = 18;
const EDGE = 12;
const TOP = 14;

/** @param {Drawing} drawing */
const measure = ({ points, lanes }) => {
  const most = Math.max(1, ...points.map(({ y }) => y));
  const least = Math.min(0.5, ...points.map(({ from_y }) => from_y));
  const across = (WIDE - 2 * EDGE) / (most - least);
  return {
    x: (/** @type {number} */ y) => EDGE + (y - least) * across,
    y: (/** @type {number} */ lane) => TOP + LANE * lane,
    tall: 2 * TOP + LANE * (lanes - 1),
  };
};

/** @typedef {ReturnType<typeof measure>} Measure */

/** @param {Measure} to @param {DrawnPoint} point */
const section = (to, { from_x, from_y, x, y, known }) => svg`<path class="strip-wire ${known ? "" : "guessed"}"
  d=${`M${to.x(from_y)} ${to.y(from_x)}V${to.y(x)}H${to.x(y)}`} />`;

/** @param {Measure} to @param {DrawnPoint} point */
const dot = (to, { x, y, drawn_as }) =>
  drawn_as === "junction"
    ? nothing
    : svg`<circle class="strip-dot" cx=${to.x(y)} cy=${to.y(x)} r=${drawn_as.startsWith("attenuator") ? 5 : 3.5} />`;

/** @param {Measure} to @param {DrawnPoint} point @param {number} share */
const along = (to, { from_y, y }, share) =>
  Math.min(WIDE - 3, Math.max(3, to.x(from_y + (y - from_y) * share)));

/** @param {Measure} to @param {Drawing} drawing @param {Mark} mark */
const marked = (to, { points }, { point: id, share, from, to: end }) => {
  const point = points.find((each) => each.id === id);
  if (!point) {
    return id === null ? svg`<circle class="strip-mark" cx=${EDGE} cy=${to.y(0)} r="9" />` : nothing;
  }
  const level = to.y(point.x);
  if (share === undefined) {
    return svg`<circle class="strip-mark" cx=${to.x(point.y)} cy=${level} r="9" />`;
  }
  const at = along(to, point, share);
  const [low, high] = [along(to, point, from ?? share), along(to, point, end ?? share)];
  return svg`${high > low
      ? svg`<path class="strip-range" d=${`M${low} ${level - 8}v16M${low} ${level}H${high}M${high} ${level - 8}v16`} />`
      : nothing}
    <path class="strip-cross" d=${`M${at - 6} ${level - 6}l12 12M${at + 6} ${level - 6}l-12 12`} />`;
};

/**
 * @param {Drawing | null} drawing @param {Mark[]} marks @param {string} words for those who
 *   cannot see it
 */
export const strip = (drawing, marks, words) => {
  if (!drawing?.points.length) return nothing;
  const to = measure(drawing);
  return html`<svg class="strip" viewBox="0 0 ${WIDE} ${to.tall}" role="img" aria-label=${words}>
    ${drawing.points.map((point) => section(to, point))}
    <rect class="strip-start" x=${EDGE - 5} y=${to.y(0) - 6} width="10" height="12" rx="2" />
    ${drawing.points.map((point) => dot(to, point))}
    ${marks.map((mark) => marked(to, drawing, mark))}
  </svg>`;
};
