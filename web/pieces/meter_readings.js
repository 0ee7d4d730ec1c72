/** What was read on this line: today's readings in their bands, and those of earlier visits. */

import { html, nothing } from "../markup.js";
import { isLoose, lineOf, readingsOf } from "../meter_first.js";
import { say } from "../say.js";
import { squareButton } from "./button.js";
import { dayOf } from "./day.js";
import { readingRow } from "./reading.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../meter_state").Diagnosis} Diagnosis */
/** @typedef {import("../meter_state").Record_} Record_ */

/** @param {string} reading */
const dropButton = (reading) => squareButton("remove", say("meter.drop"), "meter.drop", { reading });

/** @param {State} state @param {string} zone */
const baselineWay = (state, zone) => {
  const measured = readingsOf(state).now.filter(({ quantity }) => quantity !== "plays");
  if (isLoose(state) || !measured.length || !zone) return nothing;
  const known = measured.every((one) => "baseline" in one && one.baseline);
  return html`<button type="button" class="plain-button" data-act="meter.baseline" aria-pressed=${known}>
      ${say(known ? "meter.baseline_off" : "meter.make_baseline")}
    </button>
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

/** @param {Record_} record @param {string} zone */
const recordRow = (record, zone) =>
  readingRow(record, zone, {
    title: html`${recordTitle(record)}
      ${record.is_baseline ? html`<span class="tag">${say("meter.baseline")}</span>` : nothing}`,
  });

/** @param {[string, Record_[]]} day @param {string} zone */
const visit = ([at, records], zone) => {
  const measured = records.filter(({ code }) => code !== "heard");
  const known = measured.length > 0 && measured.every((one) => one.is_baseline);
  const readings = measured.map(({ reading }) => reading).join(" ");
  return html`<details class="visit">
    <summary>${say("record.visit", { day: dayOf(at)?.day ?? at, count: String(records.length) })}
      ${known ? html`<span class="tag">${say("meter.baseline")}</span>` : nothing}</summary>
    <ul class="readings">${records.map((record) => recordRow(record, zone))}</ul>
    ${measured.length
      ? html`<button type="button" class="plain-button" data-act="meter.baseline_of"
          data-readings=${readings} data-baseline=${known ? "no" : "yes"} aria-pressed=${known}>
          ${say(known ? "record.baseline_off" : "record.baseline")}
        </button>`
      : nothing}
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
    ${byDay(earlier).map((day) => visit(day, zone))}
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
