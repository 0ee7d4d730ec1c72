/** What touches on the meter do: say where and what, type what it shows, keep it, take it back. */

import { NoAnswer, Overtaken, Refused } from "../door.js";
import {
  complaintOf, costsOf, firstEntry, heardOf, isLoose, lineOf, loudspeakersOf, meteredZone, placeOf, readingsOf, stoodOf,
} from "../meter_first.js";
import { EFFORTS, INSTRUMENT, makeMeterKeep, OVER_RANGE } from "../meter_keep.js";
import { say } from "../say.js";

/** @typedef {import("../meter_state").Entry} Entry */
/** @typedef {import("../meter_state").Heard} Heard */
/** @typedef {import("../meter_state").Efforts} Efforts */

const MOST_SIGNS = 10;

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const meterActions = ({ store, door, edits, keeper }) => {
  const { keep, drop, mark } = makeMeterKeep({ store, edits, keeper });

  /** @param {Partial<Entry>} part */
  const enter = (part) => {
    const { meter } = store.read();
    store.change({ meter: { ...meter, entry: { ...meter.entry, ...part } } });
  };

  /** Where it is taken, as the command names it. */
  const whereOf = () => {
    const [family = "", id = ""] = placeOf(store.read()).split(":");
    return { [family]: id };
  };

  /** @param {string} value */
  const keepTyped = (value) => {
    const { quantity, controls } = store.read().meter.entry;
    const { looking, lifted } = stoodOf(store.read());
    const where = whereOf();
    enter({ text: "" });
    return keep([{ where, looking, lifted, quantity, controls, value }]);
  };

  /** @param {string} point @param {Heard} value @param {string} [id] */
  const heard = (point, value, id) => {
    /** @type {Pick<Entry, "looking" | "lifted" | "controls"> & {quantity: "plays"}} */
    const stood = { looking: "out", lifted: [], quantity: "plays", controls: "set" };
    return { ...stood, where: { point }, value, ...(id ? { id } : {}) };
  };

  /** The line as an ask takes it. @param {string | undefined} zone */
  const askedLine = (zone) => {
    const { desk, meter } = store.read();
    const { count, tap_w, line_v, amplifier_w } = meter.about;
    if (isLoose(store.read())) return { about: { count, tap_w, line_v, amplifier_w } };
    return { job: desk?.job, where: { zone } };
  };

  /** @param {"expected_working" | "share_working"} ask @param {Record<string, unknown>} body */
  const explain = async (ask, body) => {
    /** @type {import("../state").Bench} */
    const asked = { is: "working", finding: "", would: "{}", of: null, answer: null, failed: null, back: null };
    store.change({ bench: asked });
    /** @param {Partial<typeof asked>} part */
    const tell = (part) => {
      if (store.read().bench === asked) store.change({ bench: { ...asked, ...part } });
    };
    try {
      tell({ answer: await door.ask(ask, body, "working") });
    } catch (error) {
      if (error instanceof Overtaken) return;
      if (error instanceof Refused) tell({ failed: error.problem.words });
      else if (error instanceof NoAnswer) tell({ failed: say("engine.no_answer") });
      else throw error;
    }
  };

  return {
    "meter.sign": ({ data: { sign = "" } }) => {
      const { text } = store.read().meter.entry;
      if (text === OVER_RANGE) enter({ text: sign });
      else if (text.length < MOST_SIGNS) enter({ text: text + sign });
    },
    "meter.erase": () => {
      const { text } = store.read().meter.entry;
      enter({ text: text === OVER_RANGE ? "" : text.slice(0, -1) });
    },
    "meter.type": ({ text }) => enter({ text }),
    "meter.place": ({ text }) => enter({ place: text, looking: "out", lifted: [] }),
    "meter.quantity": ({ text }) => enter({ quantity: /** @type {Entry["quantity"]} */ (text), text: "" }),
    "meter.controls": ({ text }) => enter({ controls: /** @type {Entry["controls"]} */ (text) }),
    "meter.complaint": ({ text: complaint }) => {
      const complaint_of = lineOf(store.read());
      store.change({ meter: { ...store.read().meter, complaint, complaint_of, diagnosis: null } });
    },

    "meter.enter": () => {
      const { text } = store.read().meter.entry;
      if (text.trim()) return keepTyped(text);
      document.getElementById("meter-shows")?.focus();
    },
    /** It shows no number: that stands where a number would, and is judged by the same touch. */
    "meter.over_range": () => enter({ text: OVER_RANGE }),

    /** What is measured with is said once and remembered. */
    "meter.instrument": ({ data: { field = "" }, text }) => {
      const { meter } = store.read();
      const instrument = { ...meter.instrument, [field]: text };
      store.change({ meter: { ...meter, instrument } });
      // the air is another one tomorrow
      return keeper.keep(INSTRUMENT, { ...instrument, temperature_c: "" });
    },

    /** How hard it is to get somewhere is remembered until it is said otherwise. */
    "meter.effort": ({ data: { access = "" }, text }) => {
      const { meter } = store.read();
      const efforts = /** @type {Efforts} */ ({ ...meter.efforts, [access]: text });
      store.change({ meter: { ...meter, efforts } });
      return keeper.keep(EFFORTS, efforts);
    },

    "meter.brush": ({ data: { heard: brush = "" } }) =>
      store.change({ meter: { ...store.read().meter, brush: /** @type {Heard} */ (brush) } }),

    /** A loudspeaker is touched: it plays as the brush says; the same again takes it back. */
    "meter.heard": ({ data: { point = "" } }) => {
      const { brush } = store.read().meter;
      const before = heardOf(store.read()).get(point);
      if (before?.value === brush) return drop(before.id);
      return keep([heard(point, brush, before?.id)]);
    },

    "meter.rest_well": () => {
      const told = heardOf(store.read());
      const rest = loudspeakersOf(store.read()).filter(({ id }) => !told.has(id));
      if (rest.length) return keep(rest.map(({ id }) => heard(id, "well")));
    },

    "meter.drop": ({ data: { reading = "" } }) => drop(reading),

    /** The readings of one day become the baseline, or no longer. */
    "meter.baseline_of": ({ data: { readings = "", baseline } }) =>
      mark(readings.split(" "), baseline === "yes"),

    /** Open how what a reading or a place should read came to be. */
    "meter.explain": ({ data: { ask = "{}" } }) => {
      const { zone, ...more } = JSON.parse(ask);
      const { now, earlier } = readingsOf(store.read());
      const reading = [...now, ...earlier].find(({ id }) => id === more.reading);
      const read = more.reading ? { reading } : {};
      return explain("expected_working", { ...askedLine(zone), ...more, ...read });
    },

    /** Open how the rank of a group of suspects came to be. */
    "meter.share": ({ data: { group = "0" } }) => {
      const state = store.read();
      const complaint = complaintOf(state) || null;
      const body = { ...askedLine(meteredZone(state)?.id), readings: readingsOf(state).now, complaint, costs: costsOf(state) };
      const resume = state.meter.diagnosis?.answer.searched ?? null;
      return explain("share_working", { ...body, resume, group: Number(group) });
    },

    /** Take what is proposed: the next reading, or one of the first test. */
    "meter.take": ({ data: { proposal = "{}" } }) => {
      const { where = {}, looking = "out", lifted = [], quantity, controls } = JSON.parse(proposal);
      const [[family, id] = ["", ""]] = Object.entries(where);
      const place = id ? `${family}:${id}` : "";
      const { quantity: usual, controls: stand } = firstEntry;
      enter({ place, looking, lifted, quantity: quantity ?? usual, controls: controls ?? stand, text: "" });
      // once it is painted: there the reading is typed, or here is touched what is heard
      queueMicrotask(() => document.getElementById(quantity === "plays" ? "heard-title" : "meter-shows")?.focus());
    },
  };
};
