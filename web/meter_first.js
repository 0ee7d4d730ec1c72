/** What is held about the meter before anything is read, and which readings belong to a line. */

import { withToday } from "./manner.js";

/** @typedef {import("./meter_state").MeterState} MeterState */
/** @typedef {import("./state").State} State */
/** @typedef {import("./state").Zone} Zone */

/** @type {import("./meter_state").Entry} */
export const firstEntry = {
  place: "",
  looking: "out",
  lifted: [],
  quantity: "z_1k_ohm",
  controls: "open",
  text: "",
};

/** @type {import("./meter_state").About} */
export const firstAbout = {
  count: "",
  tap_w: "",
  line_v: "",
  amplifier_w: "",
  on: false,
  readings: [],
  next: 1,
  job: null,
  problem: null,
};

/** @type {import("./meter_state").Far} */
export const firstFar = {
  of: "",
  fault: "short",
  quantity: "dc_ohm", // what an ohmmeter shows: nearly everybody has one, and a short is read by it
  typed: {},
  cable: "",
  far_point: "",
  answer: null,
  problem: null,
};

/** @type {MeterState} */
export const firstMeter = {
  entry: firstEntry,
  instrument: { name: "", tolerance_pct: "", temperature_c: "", leads_ohm: "" },
  efforts: {},
  complaint: "",
  complaint_of: "",
  brush: "silent",
  diagnosis: null,
  judging: false,
  expected: null,
  records: null,
  complaints: null,
  about: firstAbout,
  run: null,
  far: firstFar,
  paper: null,
  sketch: null,
};

/**
 * What is hard to reach here, as an ask takes it. Where boxes are, others stand open beside them.
 * @param {State} state
 */
export const costsOf = ({ meter: { efforts } }) => ({
  ...efforts,
  ...(efforts.box ? { open_another: efforts.box, probe: efforts.box } : {}),
});

/** Whether the line on the screen is one nobody has drawn. @param {State} state */
export const isLoose = ({ place: { screen } }) => screen === "wrong";

/**
 * The zone whose meter is on the screen, of the job or of a line nobody has drawn.
 * @param {State} state @returns {Zone | undefined}
 */
export const meteredZone = (state) => {
  const { desk, place, meter } = state;
  if (isLoose(state)) return meter.about.on ? meter.about.job?.zones[0] : undefined;
  if (place.screen === "test") {
    const zone = meter.run?.job === desk?.id ? meter.run?.zone : null;
    return desk?.job.zones.find(({ id }) => id === zone);
  }
  const looks = place.view === "meter" || place.view === "distance";
  return place.screen === "zone" && looks
    ? desk?.job.zones.find(({ id }) => id === place.zone)
    : undefined;
};

/** Two jobs may call their zones alike: an answer is of a zone of one job. @param {State} state */
export const lineOf = (state) => {
  const { desk, place } = state;
  if (place.screen === "distance") return "bare";
  const zone = meteredZone(state);
  return zone ? [isLoose(state) ? "" : desk?.id, zone.id].join(" ") : "";
};

/** What may be measured there. @param {Zone} zone */
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

/**
 * How it is taken there: what was chosen for another line says nothing of this one.
 * @param {State} state @returns {Pick<import("./meter_state").Entry, "looking" | "lifted">}
 */
export const stoodOf = (state) => {
  const { place, looking, lifted } = state.meter.entry;
  return place === placeOf(state) ? { looking, lifted } : { looking: "out", lifted: [] };
};

/** What a point of the line on the screen is called. @param {State} state @param {string} id */
export const titleOf = (state, id) => {
  const face = isLoose(state) ? undefined : state.desk?.seen.faces.things[id];
  const point = meteredZone(state)?.line.find((each) => each.id === id);
  return face?.title ?? point?.fitted.label ?? id;
};

/** The drawing of the line on the screen, once it is there. @param {State} state */
export const sketchOf = (state) => {
  const { sketch } = state.meter;
  return sketch && sketch.of === lineOf(state) ? sketch.answer : null;
};

/** What was typed of a distance on this line; of another line it says nothing. @param {State} state */
export const farOf = (state) => (state.meter.far.of === lineOf(state) ? state.meter.far : firstFar);

/** The complaint about the line on the screen, if somebody chose one. @param {State} state */
export const complaintOf = (state) =>
  state.meter.complaint_of === lineOf(state) ? state.meter.complaint : "";

/** The loudspeakers of the line on the screen. @param {State} state */
export const loudspeakersOf = (state) =>
  meteredZone(state)?.line.filter(({ fitted }) => fitted.is === "loudspeaker") ?? [];

/**
 * The readings of one line, those of today apart from those of earlier visits.
 * @param {State} state
 */
export const readingsOf = (state) => {
  if (isLoose(state)) return { now: state.meter.about.readings, earlier: [] };
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

/** How each loudspeaker was heard today, by its id. @param {State} state */
export const heardOf = (state) =>
  new Map(
    readingsOf(state)
      .now.filter(({ quantity }) => quantity === "plays")
      .map((reading) => [reading.where.point ?? "", reading]),
  );
