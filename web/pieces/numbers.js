/** What arrives at a point: volts, watts, cable loss and level, in both states. Each opens its working. */

import { html, nothing } from "../markup.js";
import { say } from "../say.js";
import { figure } from "./figure.js";

/** @typedef {import("../line_state").PointNumbers} PointNumbers */
/** @typedef {"override" | "set"} Which */

/** @param {PointNumbers} numbers @param {Which} state @param {boolean} named */
const stateRows = ({ rows }, state, named) => html`${named
    ? html`<tr>
        <th class="numbers-state" scope="rowgroup" colspan="4">${state === "set" ? say("state.set") : say("state.override")}</th>
      </tr>`
    : nothing}
  <tr>
    ${rows.map((row) => html`<td>${figure(row[state].shown, row[state].finding, row.name)}</td>`)}
  </tr>`;

/** @param {PointNumbers | null | undefined} numbers */
export const numbersTable = (numbers) =>
  numbers
    ? html`<div class="numbers-frame"><table class="numbers">
        <caption class="unseen">${say("numbers.title")}</caption>
        <thead>
          <tr>
            ${numbers.rows.map(({ name }) => html`<th scope="col">${name}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${stateRows(numbers, "override", !numbers.same)}
        </tbody>
        ${numbers.same ? nothing : html`<tbody>${stateRows(numbers, "set", true)}</tbody>`}
      </table></div>`
    : html`<p class="quiet numbers-asked">${say("numbers.asked")}</p>`;
