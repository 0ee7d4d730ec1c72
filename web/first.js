/** The state before anything is known. */

import { emptyTally } from "./actions/tally.js";
import { firstLine } from "./line_first.js";
import { firstMeter } from "./meter_first.js";
import { catalogueOf } from "./stock.js";

/**
 * @param {import("./state").Place} place
 * @param {import("./state").Manner} manner
 * @returns {import("./state").State}
 */
export const firstState = (place, manner) => ({
  place,
  engine: { stage: "fetch", bytes: 0, cause: null, version: null, way: null },
  manner,
  catalogue: catalogueOf(manner),
  tally: emptyTally,
  jobs: null,
  desk: null,
  missing: false,
  bench: null,
  going: null,
  preview: null,
  line: firstLine,
  meter: firstMeter,
  notice: null,
  offline: "unknown",
  kept_for_good: null,
  update: false,
  removing: null,
  changes: null,
  share: null,
  pasted: "",
  arrived: null,
  dragging: false,
  wishes: [],
  drafts: [],
  comparing: null,
  past: null,
  copied: {},
  reminded: {},
});
