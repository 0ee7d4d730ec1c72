/** Why a thing has its verdict, and what can be done about it, at the thing itself. */

import { html, nothing } from "../markup.js";
import { shape } from "./mark.js";
import { reason } from "./sentence.js";

/** @param {import("../state").Desk} desk @param {string} id */
export const reasonAt = ({ seen }, id) => {
  const { reason: words, reason_finding, verdict } = seen.faces.things[id] ?? {};
  if (!words) return nothing;
  const remedy = seen.findings.find((finding) => finding.id === reason_finding)?.remedy;
  return html`${reason(shape(verdict ?? "note"), words, reason_finding, `bench-reason v-${verdict}`)}
    ${remedy ? html`<p class="bench-remedy remedy">${remedy}</p>` : nothing}`;
};
