/** What touches do in a first test: begin, confirm, enter, go on, leave out, and take it up again. */

import { withToday } from "../manner.js";
import { firstEntry } from "../meter_first.js";
import { makeMeterKeep } from "../meter_keep.js";
import { END, FOREIGN, keyOf, runOf, stepsOf } from "../test_run.js";

/** @typedef {import("../meter_state").Run} Run */
/** @typedef {import("../meter_state").Said} Said */

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const testActions = ({ store, edits, keeper }) => {
  const { keep, mark } = makeMeterKeep({ store, edits, keeper });

  /** @param {Partial<Run>} part */
  const change = (part) => {
    const { meter } = store.read();
    if (!meter.run) return;
    const run = { ...meter.run, again: false, ...part };
    const entry = { ...meter.entry, text: "" };
    store.change({ meter: { ...meter, run, entry } });
    return keeper.keep(runOf(run.job), { ...run, answer: null });
  };

  /** @param {Said["is"]} is */
  const say = (is) => {
    const { meter, manner } = store.read();
    if (!meter.run?.zone) return;
    const { today: at } = withToday(manner);
    const { zone, step, said } = meter.run;
    return change({ said: { ...said, [keyOf(zone, step)]: { is, at } } });
  };

  /** @param {number} by */
  const step = (by) => {
    const { run } = store.read().meter;
    const codes = stepsOf(run);
    const at = codes.indexOf(run?.step ?? "");
    return change({ step: codes[at + by] ?? END });
  };

  /** @param {string} value */
  const enter = (value) => {
    const { run } = store.read().meter;
    const zone = run?.answer?.zones.find((each) => each.zone === run.zone);
    const reading = zone?.steps.find(({ code }) => code === run?.step)?.reading;
    if (!reading || !run?.zone) return;
    const { quantity, controls } = reading;
    const entry = { ...firstEntry, quantity };
    store.change({ meter: { ...store.read().meter, entry, run: { ...run, again: false } } });
    return keep([{ where: { zone: run.zone }, looking: "out", lifted: [], quantity, controls, value }]);
  };

  return {
    "test.begin": () => {
      const { manner, desk, meter } = store.read();
      if (!desk) return;
      const { today: since } = withToday(manner);
      // Begun again on one day, the same readings answer it.
      const same = meter.run?.job === desk.id && meter.run.since === since;
      const answer = same ? (meter.run?.answer ?? null) : null;
      /** @type {Run} */
      const run = { job: desk.id, since, zone: null, step: "", said: {}, again: false, answer };
      store.change({ meter: { ...meter, run } });
      return keeper.keep(runOf(desk.id), { ...run, answer: null });
    },

    "test.zone": ({ data: { zone = "" } }) => {
      const { run } = store.read().meter;
      const open = run?.answer?.zones.find((each) => each.zone === zone)?.steps ?? [];
      const left = open.find(({ code, record }) => !record && !run?.said[keyOf(zone, code)]);
      return change({ zone, step: left?.code ?? END });
    },

    "test.step": ({ data: { step: code = "" } }) => change({ step: code }),
    "test.volts_again": () => change({ step: FOREIGN, again: true }),
    "test.again": () => change({ again: true }),
    "test.all": () => change({ zone: null, step: "" }),
    "test.back": () => step(-1),
    "test.next": () => step(1),

    "test.say": async () => {
      await say("done");
      return step(1);
    },

    "test.leave_out": async () => {
      await say("left");
      return step(1);
    },

    "test.enter": () => {
      const { text } = store.read().meter.entry;
      if (text.trim()) return enter(text);
      document.getElementById("meter-shows")?.focus();
    },

    "test.baseline": ({ data: { zone = "", baseline } }) => {
      const { run } = store.read().meter;
      const offer = run?.answer?.zones.find((each) => each.zone === zone)?.baseline;
      if (run && offer) return mark(offer.readings, baseline === "yes", run.since);
    },
  };
};
