/** Which taps a loudspeaker can be turned to: its kind's, or the usual ones at its voltage. */

import { belowOf } from "./tree.js";

/** @typedef {import("./state").State} State */
/** @typedef {import("./state").Zone} Zone */
/** @typedef {import("./state").Fitted} Fitted */
/** @typedef {{tap_w: number, at_v: number, shown: string}} OfferedTap */

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
  const at_v = fitted.tap_at_v ?? lineVolts(state, zone);
  if (!at_v) return [];
  const kinds = state.desk?.seen.faces.kinds?.loudspeakers ?? {};
  const own = kinds[fitted.kind ?? ""]?.rows.find((row) => row.at_v === at_v || row.line_v === at_v);
  const usual = state.catalogue.usual_taps.find(({ line_v }) => line_v === at_v);
  const taps = own?.taps.length ? own.taps : (usual?.taps ?? []);
  return taps.map(({ tap_w, shown }) => ({ tap_w, at_v, shown }));
};

/** @typedef {{neighbour: number | null, largest: number | null}} Advice */

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
export const adviceOf = ({ preview }, zone, id) => {
  const options = preview?.point === id ? Object.entries(preview.options) : [];
  const fitting = options.filter(([, { keeps }]) => keeps).map(([tap]) => Number(tap));
  return {
    neighbour: neighbourOf(zone, id)?.fitted.tap_w ?? null,
    largest: fitting.length ? Math.max(...fitting) : null,
  };
};
