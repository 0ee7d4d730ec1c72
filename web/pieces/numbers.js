/** What arrives at a point: volts, watts, cable loss and level, in both states. Each opens its working. */

import { html, nothing } from "../markup.js";
import { say, sayOne } from "../say.js";
import { figure } from "./figure.js";

/** @typedef {import("../line_state").PointNumbers} PointNumbers */
/** @typedef {import("../state").Zone} Zone */
/** @typedef {import("../state").Point} Point */
/** @typedef {"override" | "set"} Which */

/** Whether the two states differ, as far as it can be told before they are worked out. @param {Zone} zone */
const isControlled = ({ line }) =>
  line.some(({ fitted }) => fitted.is === "attenuator" && (fitted.off || fitted.set_db !== 0));

/** What will be told of a point: a control draws nothing itself. @param {Point} point */
const awaited = ({ fitted }) =>
  ["volts_v", ...(fitted.is === "loudspeaker" || fitted.is === "existing" ? ["watts_w"] : []), "loss_db", "level_db"];

/** @param {PointNumbers | undefined} numbers @param {Which} state @param {boolean} named */
const stateRows = (numbers, state, named) => html`<tbody>
  ${named
    ? html`<tr>
        <th class="numbers-state" scope="rowgroup" colspan="4">${state === "set" ? say("state.set") : say("state.override")}</th>
      </tr>`
    : nothing}
  <tr>
    ${numbers
      ? numbers.rows.map((row) => html`<td>${figure(row[state].shown, row[state].finding, row.name)}</td>`)
      : html`<td></td>`}
  </tr>
</tbody>`;

/**
 * Until it is worked out there is as much room as it will take: what is below does not move.
 * @param {{answer: PointNumbers, late: boolean} | null} asked @param {Zone} zone @param {Point} point
 */
export const numbersTable = (asked, zone, point) => {
  const numbers = asked?.answer;
  const heads = numbers?.rows.map(({ what }) => what) ?? awaited(point);
  const differ = numbers ? !numbers.same : isControlled(zone);
  return html`<div class="numbers-frame ${asked?.late ? "late" : ""}" aria-busy=${!asked}>
    <table class="numbers">
      <caption class="unseen">${numbers ? say("numbers.title") : say("numbers.asked")}</caption>
      <thead>
        <tr>${heads.map((what) => html`<th scope="col">${sayOne("numbers", what)}</th>`)}</tr>
      </thead>
      ${stateRows(numbers, "override", differ)} ${differ ? stateRows(numbers, "set", true) : nothing}
    </table>
  </div>`;
};
