/** What is said of a thing that was taken away: its name, and what went with it or is left loose. */

import { say, sayOne, together } from "./say.js";
import { belowOf } from "./tree.js";

/** @typedef {import("./state").State} State */
/** @typedef {import("./state").Job} Job */
/** @typedef {import("./state").Zone} Zone */

/** @param {Job} job @param {Zone} zone */
const ofZone = ({ readings, ticks }, { id, name, line }) => {
  const places = new Set([id, ...line.map((point) => point.id)]);
  const read = readings.filter(({ where }) => Object.values(where).some((place) => place && places.has(place)));
  const ticked = ticks.filter(({ point }) => places.has(point));
  if (!line.length && !read.length) return say("removed.thing", { name });
  const values = { name, hung: String(line.length) };
  if (!read.length && !ticked.length) return say("removed.zone", values);
  return say("removed.zone_records", { ...values, readings: String(read.length), ticks: String(ticked.length) });
};

/** @param {string} name @param {readonly Zone[]} loose */
const ofSupply = (name, loose) =>
  loose.length
    ? say("removed.landed", { name, zones: loose.map((zone) => zone.name).join(", ") })
    : say("removed.thing", { name });

/**
 * Of a point of a line; `tail` says whether what hangs behind it goes, too.
 * @param {State} state @param {string} id @param {string} tail
 */
export const removedPointWords = ({ desk }, id, tail) => {
  const zone = desk?.job.zones.find(({ line }) => line.some((point) => point.id === id));
  const point = zone?.line.find((each) => each.id === id);
  if (!desk || !zone || !point) return "";
  const name = together(desk.seen.faces.things[id]?.title || sayOne("fitted", point.fitted.is));
  const behind = tail === "cut" ? belowOf(zone.line, id) : [];
  return behind.length
    ? say("removed.cut", { name, hung: String(behind.length) })
    : say("removed.thing", { name });
};

/** Of a zone, an amplifier or an output. @param {State} state @param {string} id */
export const removedWords = ({ desk }, id) => {
  if (!desk) return "";
  const { zones, amplifiers } = desk.job;
  const zone = zones.find((each) => each.id === id);
  if (zone) return ofZone(desk.job, zone);
  const outputs = amplifiers.find((each) => each.id === id)?.outputs.map((output) => output.id) ?? [id];
  const loose = zones.filter(({ output, page_output }) =>
    [output, page_output].some((each) => each && outputs.includes(each)),
  );
  return ofSupply(together(desk.seen.faces.things[id]?.title ?? ""), loose);
};
