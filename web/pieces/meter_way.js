/** From what a meter said of a line to the screen where that is read, and read again. */

import { html, nothing } from "../markup.js";
import { say } from "../say.js";

/** @typedef {import("../state").Desk} Desk */

const METERED = ["foreign_v", "meter_reading"];

/** The zone whose meter shows a finding; at an output the first of its zones. @param {Desk} desk @param {import("../state").Finding} finding */
const zoneOf = ({ job: { zones } }, { where: { zone, output } }) =>
  zone ?? zones.find((each) => each.output === output || each.page_output === output)?.id;

/** @param {Desk | null | undefined} desk @param {string | null | undefined} id of a finding, of whatever kind */
export const meterWay = (desk, id) => {
  const finding = desk?.seen.findings.find((each) => each.id === id);
  const zone = desk && finding && METERED.includes(finding.what) ? zoneOf(desk, finding) : undefined;
  return desk && zone
    ? html`<a class="plain-button meter-way" href=${`#/job/${desk.id}/zone/${zone}/meter`}
        >${say("meter.way")}</a>`
    : nothing;
};
