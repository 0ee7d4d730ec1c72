/**
 * A share as a length on a ruled scale. The drawing's own scale does the sum: one unit of the
 * view is the whole limit, and a quarter more is room to show what is too much. Where the room ends
 * is marked only under a share that hides it.
 */

import { html, nothing, svg } from "../markup.js";

/**
 * @param {number | null | undefined} share_fraction
 * @param {import("../state").Verdict | null | undefined} verdict
 * @param {number | null | undefined} [reserve_fraction] where the planned reserve begins
 */
export const shareBar = (share_fraction, verdict, reserve_fraction) => html`<svg
  class="bar v-${verdict ?? "unknown"}"
  viewBox="0 0 1.25 1"
  preserveAspectRatio="none"
  aria-hidden="true"
>
  <rect class="bar-room" width="1" height="1" />
  ${typeof share_fraction === "number"
    ? svg`<rect class="bar-share" width=${share_fraction} height="1" />`
    : nothing}
  ${reserve_fraction
    ? svg`<line class="bar-reserve" x1=${reserve_fraction} x2=${reserve_fraction} y1="0" y2="1" />`
    : nothing}
  ${typeof share_fraction === "number" && share_fraction > 1
    ? svg`<line class="bar-limit" x1="1" x2="1" y1="0" y2="1" />`
    : nothing}
</svg>`;
