/** A band with a reading in it, as a picture: where it should lie, and where it lies. */

import { html, nothing, svg } from "../markup.js";

const WIDTH = 320;
const BAND_FROM = 96;
const BAND_WIDE = 128;
const EDGE = 10;

/** A reading beyond the picture points out of it. @param {number} at */
const pointer = (at) => {
  if (at <= EDGE) return `M${EDGE - 6} 17l12 -7v14z`;
  if (at >= WIDTH - EDGE) return `M${WIDTH - EDGE + 6} 17l-12 -7v14z`;
  return `M${at} 22l-7 -14h14z`;
};


/**
 * @param {number} position 0 at the low end of the band, 1 at its high end
 * @param {string} verdict @param {string} words the same, for those who cannot see it
 * @param {{low: string, high: string}} [ends] the ends of the band, printed under it
 */
export const band = (position, verdict, words, ends) => {
  const at = Math.min(WIDTH - EDGE, Math.max(EDGE, BAND_FROM + BAND_WIDE * position));
  return html`<svg class="band v-${verdict}" viewBox="0 0 ${WIDTH} ${ends ? 46 : 30}" role="img" aria-label=${words}>
    ${svg`<line class="band-axis" x1="2" x2=${WIDTH - 2} y1="22" y2="22" />
      <rect class="band-should" x=${BAND_FROM} y="15" width=${BAND_WIDE} height="14" rx="2" />
      <path class="band-middle" d=${`M${BAND_FROM + BAND_WIDE / 2} 15v14`} />
      ${ends
        ? svg`<text class="band-words" x=${BAND_FROM} y="43" text-anchor="middle">${ends.low}</text>
          <text class="band-words" x=${BAND_FROM + BAND_WIDE} y="43" text-anchor="middle">${ends.high}</text>`
        : nothing}
      <path class="band-reads" d=${pointer(at)} />`}
  </svg>`;
};

