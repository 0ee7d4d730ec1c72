/** What an act came to, for those who hear the page: one place that stays, and says each thing once. */

import { html } from "../markup.js";
import { farOf, lineOf } from "../meter_first.js";
import { say } from "../say.js";
import { stepOf } from "../test_run.js";

/** @typedef {import("../state").State} State */

/** What was read last, and what all readings come to. @param {State} state */
const meterSays = (state) => {
  const { diagnosis, entry } = state.meter;
  const told = diagnosis?.of === lineOf(state) ? diagnosis?.answer : null;
  // what is heard is said where it is touched
  if (!told || entry.quantity === "plays") return "";
  const read = told.expected.filter(({ code }) => code !== "heard");
  const last = read.at(-1);
  const result = { headline: told.headline, reason: told.reason };
  if (!last) return say("said.heard", result);
  return say("said.read", { count: String(read.length), shown: last.shown, ...result });
};

/** @param {State} state */
const farSays = (state) => (farOf(state).answer?.places ?? []).map((one) => one.words).join(" ");

/** @param {State} state */
const testSays = ({ meter: { run } }) => {
  const record = stepOf(run)?.record;
  return record ? say("said.record", { shown: record.shown, words: record.words }) : "";
};

/** @param {State} state */
const words = (state) => {
  const { screen, view } = state.place;
  if (screen === "test") return testSays(state);
  if (screen === "distance" || view === "distance") return farSays(state);
  return screen === "wrong" || view === "meter" ? meterSays(state) : "";
};

/** @param {State} state */
export const said = (state) => html`<p class="unseen" role="status" id="said">${words(state)}</p>`;
