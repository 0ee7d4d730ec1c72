/** What is held about the meter before anything is read, and which readings belong to a line. */

import { withToday } from "./manner.js";

/** @typedef {import("./meter_state").MeterState} MeterState */
/** @typedef {import("./state").State} State */

/** @type {import("./meter_state").Entry} */
export const firstEntry = {
  place: "",
  looking: "out",
  lifted: [],
  quantity: "z_1k_ohm",
  controls: "open",
  text: "",
};

/** @type {MeterState} */
export const firstMeter = {
  entry: firstEntry,
  complaint: "",
  diagnosis: null,
  expected: null,
  complaints: null,
};

/** The zone whose meter is on the screen. @param {State} state */
export const meteredZone = ({ desk, place }) =>
  place.screen === "zone" && place.view === "meter"
    ? desk?.job.zones.find(({ id }) => id === place.zone)
    : undefined;

/** What may be measured there. @param {import("./state").Zone} zone */
const placesOf = ({ id, output, line }) =>
  new Set([id, output, ...line.map((point) => point.id)].filter(Boolean));

/**
 * Where the next reading is taken, as "zone:k7f3": what was chosen, where that is on this line.
 * @param {State} state
 */
export const placeOf = (state) => {
  const zone = meteredZone(state);
  const { place } = state.meter.entry;
  if (!zone) return "";
  return placesOf(zone).has(place.split(":")[1] ?? "") ? place : `zone:${zone.id}`;
};

/** The readings of one line, those of today apart from those of earlier visits. @param {State} state */
export const readingsOf = (state) => {
  const zone = meteredZone(state);
  const { today } = withToday(state.manner);
  const places = zone ? placesOf(zone) : new Set();
  const here = (state.desk?.job.readings ?? []).filter(({ where }) =>
    Object.values(where).some((place) => places.has(place)),
  );
  return {
    now: here.filter(({ at }) => at === today),
    earlier: here.filter(({ at }) => at !== today),
  };
};
