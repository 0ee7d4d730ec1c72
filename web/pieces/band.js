/** A band with a reading in it, as a picture: where it should lie, and where it lies. */

import { svg, html } from "../markup.js";

const WIDTH = 200;
const BAND_FROM = 60;
const BAND_WIDE = 80;
const EDGE = 6;

/**
 * @param {number} position 0 at the low end of the band, 1 at its high end
 * @param {string} verdict @param {string} words the same, for those who cannot see it
 */
export const band = (position, verdict, words) => {
  const at = Math.min(WIDTH - EDGE, Math.max(EDGE, BAND_FROM + BAND_WIDE * position));
  return html`<svg class="band v-${verdict}" viewBox="0 0 200 24" role="img" aria-label=${words}>
    ${svg`<line class="band-axis" x1="2" x2="198" y1="14" y2="14" />
      <rect class="band-should" x=${BAND_FROM} y="9" width=${BAND_WIDE} height="10" />
      <path class="band-reads" d=${`M${at} 20 l-5 -14 h10 z`} />`}
  </svg>`;
};
