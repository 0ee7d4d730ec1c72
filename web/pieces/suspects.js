/** What it may be, each with its place on the line; and the next reading with what it would mean. */

import { html, nothing } from "../markup.js";
import { isLoose, meteredZone, sketchOf } from "../meter_first.js";
import { say } from "../say.js";
import { strip } from "./strip.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../meter_state").Diagnosis} Diagnosis */
/** @typedef {Diagnosis["groups"][number]} Group */
/** @typedef {Diagnosis["bundles"][number]} Bundle */
/** @typedef {Group["suspects"][number]} Suspect */

/** What lies on the wire in front of a point, not at the point itself. */
const ON_WIRE = ["cut", "short", "joint"];
const MIDDLE = 0.5;
const MOST_OPEN = 4;

/** @param {Pick<Suspect, "fault" | "where">} suspect @returns {import("./strip.js").Mark} */
const markOf = ({ fault, where }) =>
  ON_WIRE.includes(fault)
    ? { point: where.point ?? null, share: MIDDLE, from: 0, to: 1 }
    : { point: where.point ?? null };

/** @param {State} state @param {Group} group @param {number} place */
const card = (state, { rank, inside, suspects }, place) => {
  const placed = suspects.filter(({ fault }) => fault !== "healthy");
  const words = placed.map((one) => one.words).join(" ");
  return html`<li class="suspect ${inside ? "" : "suspect-outside"}">
    <p class="suspect-rank">
      <button type="button" class="figure opens" data-act="meter.share" data-group=${place}
        aria-label=${say("working.open", { name: say("suspects.nth", { n: String(place + 1), short: suspects[0]?.short ?? "" }), shown: rank })}>${rank}</button>
    </p>
    ${suspects.map(
      ({ words: one, distance }) => html`<p class="suspect-words">${one} ${distance ? html`<b>${distance.words}</b>` : nothing}</p>`,
    )}
    ${placed.length
      ? strip(sketchOf(state), placed.map(markOf), say("strip.words", { words }))
      : nothing}
  </li>`;
};

/** Alike faults that nothing tells apart, as one card; each by itself folded behind. @param {State} state @param {Bundle} bundle @param {Group[]} groups */
const together = (state, { rank, words, fault, places, groups: numbers }, groups) => {
  const each = numbers.flatMap((number) => (groups[number] ? [card(state, groups[number], number)] : []));
  if (places.length === 1) return each;
  const marks = places.map((where) => markOf({ fault, where }));
  return html`<li class="suspect">
    <p class="suspect-rank"><span class="figure">${rank}</span></p>
    <p class="suspect-words">${words}</p>
    ${strip(sketchOf(state), marks, say("strip.words", { words }))}
    <details><summary>${say("meter.each")}<span class="unseen">: ${words}</span></summary>
      <ul class="suspects">${each}</ul>
    </details>
  </li>`;
};

/** @param {State} state @param {Diagnosis} told */
export const suspectCards = (state, { groups, bundles, odds }) => {
  if (!groups.length) return nothing;
  const { job, zone } = state.place;
  const drawn = !isLoose(state) && groups.some(({ suspects }) => suspects.some(({ where }) => where.point));
  const listed = bundles.filter((one) => one.groups.length);
  const rest = listed.slice(MOST_OPEN);
  return html`<section class="meter-part" aria-labelledby="meter-suspects">
    <h2 id="meter-suspects">${say("meter.suspects")}</h2>
    <p class="faded">${odds}</p>
    <ol class="suspects">${listed.slice(0, MOST_OPEN).map((one) => together(state, one, groups))}</ol>
    ${rest.length
      ? html`<details><summary>${say("meter.less_likely", { n: String(rest.length) })}</summary>
          <ol class="suspects" start=${MOST_OPEN + 1}>${rest.map((one) => together(state, one, groups))}</ol>
        </details>`
      : nothing}
    ${drawn && meteredZone(state)
      ? html`<a class="plain-button to-drawing" href=${`#/job/${job}/zone/${zone}/drawing`}>${say("meter.to_drawing")}</a>`
      : nothing}
  </section>`;
};

/** @param {NonNullable<Diagnosis["next"]>["outcomes"][number]} outcome */
const outcome = ({ shown, rank, suspects, more }) => html`<div class="outcome">
  <dt>${shown} <span class="faded">${rank}</span></dt>
  <dd>
    ${suspects.map((words) => html`<p>${words}</p>`)}
    ${more ? html`<p class="faded">${say("meter.more", { n: `${more}` })}</p>` : nothing}
  </dd>
</div>`;

/** @param {Diagnosis} told */
export const nextCard = ({ next, next_reason }) => {
  if (!next) {
    return next_reason ? html`<section class="meter-part"><p>${next_reason}</p></section>` : nothing;
  }
  const { where, looking, lifted, quantity, controls } = next;
  const proposal = JSON.stringify({ where, looking, lifted, quantity, controls });
  return html`<section class="meter-part meter-next" aria-labelledby="meter-next">
    <h2 id="meter-next">${say("meter.next")}</h2>
    <p class="meter-next-words">${next.words}</p>
    <button type="button" class="chief-button" data-act="meter.take" data-proposal=${proposal}>
      ${say("meter.take")}
    </button>
    <ul class="meter-list next-cautions">${next.cautions.map((words) => html`<li>${words}</li>`)}</ul>
    <details><summary>${say("meter.would_mean")}</summary>
      <dl class="outcomes">${next.outcomes.map(outcome)}</dl>
    </details>
  </section>`;
};
