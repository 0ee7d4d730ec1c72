/** Under a first test: the one big entry of its step, or the one thing to confirm. */

import { withToday } from "../manner.js";
import { html, nothing } from "../markup.js";
import { meterPad } from "../pieces/meter_pad.js";
import { say } from "../say.js";
import { END, nextZone, stepOf, stepsOf, zoneOf } from "../test_run.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../meter_state").Run} Run */

const ACTS = { enter: "test.enter" };

/** @param {string} words @param {string} act */
const chief = (words, act, zone = "") => html`<button type="button"
  class="chief-button test-chief" data-act=${act} data-zone=${zone}>${words}</button>`;

/** @param {string} words @param {string} act @param {boolean} [off] */
const way = (words, act, off = false) =>
  html`<button type="button" class="plain-button" data-act=${act} ?disabled=${off}>${words}</button>`;

/** @param {Run} run */
const ways = (run) => {
  const first = stepsOf(run)[0] === run.step;
  return html`<div class="test-ways">
    ${way(say("test.back"), "test.back", first)}
    ${way(say("test.all"), "test.all")}
    ${run.step === END ? nothing : way(say("test.leave_out"), "test.leave_out")}
  </div>`;
};

/** @param {State} state @param {Run} run */
const stepBench = ({ meter: { entry, judging } }, run) => {
  const step = stepOf(run);
  if (!step) {
    const next = nextZone(run);
    return next
      ? chief(say("test.next_zone", { zone: next.title }), "test.zone", next.zone)
      : chief(say("test.to_summary"), "test.all");
  }
  if (step.stop && !run.again) return chief(say("test.volts_again"), "test.volts_again");
  if (!step.reading) return chief(say("test.done"), "test.say");
  const { quantity } = step.reading;
  if (!step.record || run.again) return meterPad({ ...entry, quantity }, ACTS, judging);
  return html`${chief(say("test.next"), "test.next")}
    <div class="test-ways">${way(say("test.measure_again"), "test.again")}</div>`;
};

/** A new one only where this one is through, or was begun on another day. @param {State} state @param {Run} run */
const anew = ({ manner }, { since, answer }) =>
  answer?.whole || since !== withToday(manner).today
    ? way(say("test.new"), "test.begin")
    : nothing;

/** @param {State} state */
export const testBench = (state) => {
  const { run } = state.meter;
  if (!run || run.job !== state.desk?.id) return chief(say("test.begin"), "test.begin");
  if (!run.answer) return nothing;
  if (!zoneOf(run)) return anew(state, run);
  return html`${stepBench(state, run)} ${ways(run)}`;
};
