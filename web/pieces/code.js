/** A QR code as one path on white ground, with the white around it that a reader needs. */

import { html } from "../markup.js";

const WHITE_AROUND = 4;

/**
 * The dark modules as runs: each a strip of a row, one module high.
 * @param {string[]} rows of "0" and "1"
 */
export const darkPath = (rows) =>
  rows
    .flatMap((row, down) =>
      [...row.matchAll(/1+/g)].map(
        ({ index, 0: run }) => `M${index + WHITE_AROUND} ${down + WHITE_AROUND}h${run.length}v1h-${run.length}z`,
      ),
    )
    .join("");

/** @param {import("../state").Code} code @param {string} name what it is, for those who cannot see it */
export const codePicture = ({ rows, size }, name) => {
  const side = size + 2 * WHITE_AROUND;
  return html`<svg class="code" viewBox="0 0 ${side} ${side}" role="img" aria-label=${name}
    shape-rendering="crispEdges">
    <rect class="code-ground" width=${side} height=${side} />
    <path class="code-dark" d=${darkPath(rows)} />
  </svg>`;
};
