/** What was read on this line: today's readings in their bands, and those of earlier visits. */

import { html, nothing } from "../markup.js";
import { withToday } from "../manner.js";
import { isLoose, lineOf, readingsOf } from "../meter_first.js";
import { say } from "../say.js";
import { squareButton } from "./button.js";
import { dayOf } from "./day.js";
import { verdictMark } from "./mark.js";
import { readingRow } from "./reading.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../meter_state").Diagnosis} Diagnosis */
/** @typedef {import("../meter_state").Record_} Record_ */
/** @typedef {NonNullable<import("../meter_state").MeterState["records"]>["answer"]} Records */

/** @param {string} reading */
const dropButton = (reading) => squareButton("remove", say("meter.drop"), "meter.drop", { reading });

/**
 * The readings of one day become the baseline where the core offers them; else why not.
 * @param {Records} told @param {string} at
 * @param {{on: import("../say.js").Code, off: import("../say.js").Code}} words
 */
const baselineOf = ({ records, offers }, at, { on, off }) => {
  const marked = records.filter((one) => one.at === at && one.is_baseline).map(({ reading }) => reading);
  const { readings = [], why = "" } = offers[at] ?? {};
  const known = marked.length > 0;
  if (!known && why) return html`<p>${verdictMark("unknown", why)}</p>`;
  if (!known && !readings.length) return nothing;
  return html`<button type="button" class="plain-button" data-act="meter.baseline_of" aria-pressed=${known}
    data-readings=${(known ? marked : readings).join(" ")} data-baseline=${known ? "no" : "yes"}>
    ${say(known ? off : on)}</button>`;
};

/** @param {State} state @param {string} zone */
const baselineWay = (state, zone) => {
  const told = state.meter.records?.of === zone ? state.meter.records.answer : null;
  if (isLoose(state) || !told) return nothing;
  const { today } = withToday(state.manner);
  return html`${baselineOf(told, today, { on: "meter.make_baseline", off: "meter.baseline_off" })}
    <p class="faded">${say("meter.baseline_why")}</p>`;
};

/** The records of each earlier day together, the newest day first. @param {Record_[]} records */
const byDay = (records) => {
  /** @type {Map<string, Record_[]>} */
  const days = new Map();
  for (const record of records) days.set(record.at, [...(days.get(record.at) ?? []), record]);
  return [...days];
};

/** @param {Record_} record */
const recordTitle = ({ place, what, how, instrument }) => html`<b>${place}</b> · ${what}
  ${how ? html`<span>${how}</span>` : nothing}
  ${instrument ? html`<span>${say("record.with", { instrument })}</span>` : nothing}`;

// What keeps a job from being called in order must be there to take back, whenever it was read.
const FLAT = ["do_not_connect", "do_not_connect_short", "at_the_limit", "reads_short"];

/** @param {Record_} record @param {string} zone */
const recordRow = (record, zone) =>
  readingRow(record, zone, {
    side: FLAT.includes(record.code) ? dropButton(record.reading) : nothing,
    title: html`${recordTitle(record)}
      ${record.is_baseline ? html`<span class="tag">${say("meter.baseline")}</span>` : nothing}`,
  });

/** @param {Records} told @param {[string, Record_[]]} day @param {string} zone */
const visit = (told, [at, records], zone) => {
  const known = records.some((one) => one.is_baseline);
  return html`<details class="visit">
    <summary>${say("record.visit", { day: dayOf(at)?.day ?? at, count: String(records.length) })}
      ${known ? html`<span class="tag">${say("meter.baseline")}</span>` : nothing}</summary>
    <ul class="readings">${records.map((record) => recordRow(record, zone))}</ul>
    ${baselineOf(told, at, { on: "record.baseline", off: "record.baseline_off" })}
  </details>`;
};

/** @param {State} state @param {string} zone */
export const earlierReadings = (state, zone) => {
  const told = state.meter.records?.of === lineOf(state) ? state.meter.records.answer : null;
  const now = new Set(readingsOf(state).now.map(({ id }) => id));
  const earlier = (told?.records ?? []).filter(({ reading }) => !now.has(reading));
  if (!told || (!earlier.length && !told.sharp)) return nothing;
  return html`<section class="meter-part" aria-labelledby="meter-earlier">
    <h2 id="meter-earlier">${say("meter.earlier")}</h2>
    ${told.sharp ? html`<p>${say("record.sharp", { repeat: told.repeat })}</p>` : nothing}
    ${byDay(earlier).map((day) => visit(told, day, zone))}
  </section>`;
};

/** @param {State} state @param {Diagnosis | null} told @param {string} zone */
export const meterReadings = (state, told, zone) => {
  const { now } = readingsOf(state);
  const measured = (told?.expected ?? []).filter(({ code }) => code !== "heard");
  if (!now.length) return nothing;
  /** @param {string} reading */
  const toolOf = (reading) => {
    const one = now.find(({ id }) => id === reading);
    return one && "instrument" in one ? one.instrument : "";
  };
  if (!measured.length && now.every(({ quantity }) => quantity === "plays")) return nothing;
  return html`<section class="meter-part" aria-labelledby="meter-readings">
    <h2 id="meter-readings">${say("meter.readings")}</h2>
    <ul class="readings">
      ${measured.map((judged) =>
        readingRow(judged, zone, { side: dropButton(judged.reading), instrument: toolOf(judged.reading) }),
      )}
    </ul>
    ${baselineWay(state, zone)}
  </section>`;
};
