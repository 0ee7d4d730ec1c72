/**
 * Which taps a loudspeaker can be turned to: its kind's, or the usual ones, in the row of its line.
 * One that stands in another row is offered the right one.
 */

import { say, together } from "./say.js";

import { belowOf } from "./tree.js";

/** @typedef {import("./state").State} State */
/** @typedef {import("./state").Zone} Zone */
/** @typedef {import("./state").Fitted} Fitted */
/** @typedef {{tap_w: number, at_v: number, row_v: number, shown: string}} OfferedTap */

/** @param {State} state @param {Zone} zone */
const lineVolts = ({ desk }, zone) =>
  desk?.job.amplifiers
    .flatMap(({ outputs }) => outputs)
    .find(({ id }) => id === (zone.page_output ?? zone.output))?.line_v;

/**
 * @param {State} state @param {Zone} zone @param {Fitted} fitted
 * @returns {OfferedTap[]}
 */
export const tapsOf = (state, zone, fitted) => {
  const row = rowOf(state, zone, fitted);
  if (!row) return [];
  const { at_v, row_v, volts, taps } = row;
  const other = typeof fitted.tap_at_v === "number" && fitted.tap_at_v !== at_v;
  return taps.map(({ tap_w, shown }) => ({
    tap_w,
    at_v,
    row_v,
    shown: other ? say("ladder.in_row", { tap: shown, at_v: volts }) : shown,
  }));
};

/**
 * The row of the line's voltage; of another only where its kind has none for this line.
 * @param {State} state @param {Zone} zone @param {Fitted} fitted
 */
const rowOf = (state, zone, fitted) => {
  const { catalogue, desk } = state;
  const { tap_at_v, kind = "" } = fitted;
  const line_v = lineVolts(state, zone) ?? tap_at_v;
  const rows = (desk?.seen.faces.kinds?.loudspeakers[kind ?? ""]?.rows ?? []).filter(({ taps }) => taps.length);
  const own = rows.find((row) => row.line_v === line_v || row.at_v === line_v) ?? rows[0];
  if (own) {
    // its mark may be written in two ways, 70 or 70.7 V, and either is this row
    const here = tap_at_v === own.line_v || tap_at_v === own.at_v;
    const at_v = here && tap_at_v ? tap_at_v : own.at_v;
    return { at_v, row_v: own.line_v, volts: own.shown, taps: own.taps };
  }
  const usual = catalogue.usual_taps.find((each) => each.line_v === line_v);
  const volts = catalogue.line_volts.find((each) => each.line_v === line_v)?.shown ?? "";
  return usual ? { at_v: usual.line_v, row_v: usual.line_v, volts, taps: usual.taps } : null;
};

/**
 * Where the neighbour's selector stands: its watts, and the row they are marked in.
 * @typedef {{tap_w: number, row_v: number | undefined, row: string}} Neighbour
 */
/** @typedef {{neighbour: Neighbour | null, largest: number | null}} Advice */

/**
 * The loudspeaker next to one on the same run: toward the terminals, else outward.
 * @param {Zone} zone @param {string} id
 */
const neighbourOf = ({ line }, id) => {
  const points = new Map(line.map((point) => [point.id, point]));
  let above = points.get(points.get(id)?.after ?? "");
  while (above && above.fitted.is !== "loudspeaker") above = points.get(above.after ?? "");
  return above ?? belowOf(line, id).find(({ fitted }) => fitted.is === "loudspeaker");
};

/**
 * The tap of its neighbour, and the largest that keeps every limit.
 * @param {State} state @param {Zone} zone @param {string} id
 * @returns {Advice}
 */
export const adviceOf = ({ preview, desk }, zone, id) => {
  const options = preview?.point === id ? Object.entries(preview.options) : [];
  const fitting = options.filter(([, { keeps }]) => keeps).map(([tap]) => Number(tap));
  const beside = neighbourOf(zone, id);
  const { tap_w } = beside?.fitted ?? {};
  const { row_v, fields } = desk?.seen.faces.things[beside?.id ?? ""] ?? {};
  return {
    neighbour: typeof tap_w === "number" ? { tap_w, row_v, row: together(fields?.tap_at_v ?? "") } : null,
    largest: fitting.length ? Math.max(...fitting) : null,
  };
};
