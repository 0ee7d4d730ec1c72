/** Which cable to pull through a line: the thinnest that passes, one section more, or what else. */

import { answerTo } from "../asked.js";
import { stockOf } from "../kinds.js";
import { html, nothing } from "../markup.js";
import { figure } from "../pieces/figure.js";
import { shape, verdictMark } from "../pieces/mark.js";
import { sentence } from "../pieces/sentence.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../line_state").Cabling["choice"]} Choice */
/** @typedef {import("../line_state").CablePick} CablePick */

const STOCKS = /** @type {const} */ (["metric", "gauge", "job"]);

/** @param {import("../line_state").Stock} now */
const stocks = (now) => html`<div class="segments" role="group" aria-label=${say("cable.stock")}>
  ${STOCKS.map(
    (each) => html`<button type="button" class="segment" data-act="cable.stock" data-stock=${each}
      aria-pressed=${each === now}>${sayOne("cable", `stock_${each}`)}</button>`,
  )}
</div>`;

/** @param {CablePick} pick @param {number} at @param {"picks" | "step_ups"} list */
const proposal = ({ title, words, why_not, loss, finding, here, command }, at, list) => html`<li class="proposal">
  <div class="proposal-head">
    <h3>${title}</h3>
    ${loss ? html`<b class="proposal-loss">${figure(loss, finding, title, command ? { commands: [command] } : null)}</b>` : nothing}
  </div>
  ${sentence(words, loss ? finding : null, "", command ? { commands: [command] } : null)}
  ${why_not ? html`<p class="quiet">${why_not}</p>` : nothing}
  ${here ? html`<p class="proposal-here">${shape("ok")}<span>${say("cable.here")}</span></p>` : nothing}
  ${command
    ? html`<button type="button" class="plain-button" data-act="cable.use" data-list=${list} data-at=${at}
        aria-label=${say("cable.use_for", { title })}>${say("cable.use")}</button>`
    : nothing}
</li>`;

/** @param {string} title @param {CablePick[]} picks @param {"picks" | "step_ups"} list */
const proposals = (title, picks, list) =>
  picks.length
    ? html`<section class="proposals">
        <h2>${title}</h2>
        <ul>${picks.map((pick, at) => proposal(pick, at, list))}</ul>
      </section>`
    : nothing;

/** @param {Choice} choice */
const waysOut = ({ ways_out }) =>
  ways_out.length
    ? html`<section class="proposals">
        <h2>${say("cable.ways_out")}</h2>
        <ul>
          ${ways_out.map(
            ({ words, passes }) => html`<li class="proposal v-${passes ? "ok" : "over"}">
              <p>${words}</p>
              ${verdictMark(passes ? "ok" : "over", say(passes ? "cable.passes" : "cable.passes_not"))}
            </li>`,
          )}
        </ul>
      </section>`
    : nothing;

/** @param {Choice} choice @param {string | undefined} finding the loss it speaks of */
const now = ({ now: words, verdict, refused }, finding) => {
  if (refused) return html`<p class="cable-now v-unknown">${shape("unknown")}<span>${refused}</span></p>`;
  return words
    ? html`<div class="cable-now v-${verdict}">${shape(verdict)}${sentence(words, finding)}</div>`
    : nothing;
};

/** @param {State["desk"]} desk @param {string | null} zone */
const lossOf = (desk, zone) =>
  desk?.seen.findings.find(({ what, where }) => what === "zone_loss_db" && where.zone === zone)?.id;

/** @param {State} state */
export const cableSheet = (state) => {
  const { place, desk } = state;
  const cabling = answerTo(state, "cabling");
  const stock = stockOf(state);
  if (!cabling) {
    return html`<p class="empty quiet" role="status">${say("cable.asked")}</p>`;
  }
  const { choice, longest } = cabling.answer;
  return html`<section class="cable ${cabling.late ? "late" : ""}" aria-label=${say("view.cable")}>
    ${now(choice, lossOf(desk, place.zone))} ${stocks(stock)}
    ${choice.stock.length
      ? html`<p class="quiet">${say("cable.list", { list: choice.stock.join(", ") })}</p>`
      : nothing}
    ${proposals(say("cable.picks"), choice.picks, "picks")}
    ${waysOut(choice)}
    ${proposals(say("cable.step_ups"), choice.step_ups, "step_ups")}
    ${longest.words === choice.refused
      ? nothing
      : html`<section class="proposals">
          <h2>${say("cable.longest")}</h2>
          <p class=${longest.known ? "" : "quiet"}>${longest.words}</p>
        </section>`}
  </section>`;
};
