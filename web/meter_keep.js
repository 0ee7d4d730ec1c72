/** Writes readings down: with the job, or beside a line nobody has drawn; and takes them back. */

import { withToday } from "./manner.js";
import { isLoose } from "./meter_first.js";

/** @typedef {import("./state").Command} Command */
/** @typedef {import("./meter_state").Quantity} Quantity */
/** @typedef {import("./meter_state").LooseReading} LooseReading */

const makeKey = () => crypto.getRandomValues(new Uint32Array(2)).join("-");

/** In which field of the command a typed number of each quantity goes. */
const FIELDS = {
  z_1k_ohm: "read_ohm",
  dc_ohm: "read_ohm",
  earth_ohm: "read_ohm",
  volts: "read_v",
  amps: "read_a",
  plays: "heard",
  foreign_v: "foreign_v",
};
export const OVER_RANGE = "OL";
export const LOOSE = "wrong";
export const INSTRUMENT = "instrument";
export const EFFORTS = "efforts";

/** Where and how a reading was taken, and as what it is written down. */
/** @typedef {Pick<LooseReading, "where" | "looking" | "lifted" | "quantity" | "controls">} Stood */

/**
 * The command that writes a reading down, and what of it was typed.
 * @param {Stood & {id: string, at: string, value: string}} taken
 * @param {{name: string, typed: Record<string, string>}} measuredWith
 */
export const keepingStep = ({ value, ...taken }, { name: instrument, typed }) => {
  const command = { do: "keep_reading", ...taken };
  if (taken.quantity === "plays") return { command: { ...command, heard: value } };
  const measured = { ...command, instrument };
  if (value.trim().toUpperCase() === OVER_RANGE) return { command: { ...measured, over_range: true }, typed };
  return { command: measured, typed: { ...typed, [FIELDS[taken.quantity]]: value } };
};

/** @param {Pick<import("./shapes").FullHouse, "store" | "edits" | "keeper">} house */
export const makeMeterKeep = ({ store, edits, keeper }) => {
  /** @param {{command: Command, typed?: Record<string, string>}[]} steps */
  const send = (steps) => {
    const words = /** @type {any} */ (`do.${steps[0]?.command.do}`);
    return edits.send({ key: makeKey(), words, steps, apart: true });
  };

  /** @param {Partial<import("./meter_state").About>} part */
  const changeAbout = (part) => {
    const { meter } = store.read();
    const about = { ...meter.about, ...part };
    store.change({ meter: { ...meter, about } });
    return keeper.keep(LOOSE, { ...about, problem: null });
  };

  /** @param {(Stood & {value: string})[]} taken */
  const keepLoose = (taken) => {
    const { meter, manner } = store.read();
    const { today: at } = withToday(manner);
    const { readings, next } = meter.about;
    const { name: instrument, typed } = measuredWith();
    const made = taken.map((one, place) => {
      const measured = one.quantity === "plays" ? {} : { instrument, ...typed };
      return { id: `r${next + place}`, at, ...one, ...measured };
    });
    const again = new Set(taken.map(heardAt).filter(Boolean));
    const others = readings.filter((one) => !again.has(heardAt(one)));
    return changeAbout({ readings: [...others, ...made], next: next + made.length });
  };

  /** What is known of the instrument goes with what it says, as it was typed. */
  const measuredWith = () => {
    const { name, tolerance_pct, temperature_c, leads_ohm = "" } = store.read().meter.instrument;
    const told = Object.entries({ tolerance_pct, temperature_c, leads_ohm }).filter(([, text]) => text.trim());
    return { name, typed: Object.fromEntries(told) };
  };

  return {
    changeAbout,

    /**
     * Write readings down together. A loudspeaker heard again today is written over.
     * @param {(Stood & {value: string, id?: string})[]} taken
     */
    async keep(taken) {
      const state = store.read();
      if (isLoose(state)) return keepLoose(taken);
      const { hand, first } = await keeper.takeNumbers(taken.length);
      const { today } = withToday(state.manner);
      return send(
        taken.map(({ id, ...one }, place) =>
          keepingStep({ at: today, ...one, id: id ?? `${hand}${first + place}` }, measuredWith()),
        ),
      );
    },

    /** @param {string} reading */
    drop(reading) {
      const state = store.read();
      if (!isLoose(state)) return send([{ command: { do: "drop_reading", reading } }]);
      const readings = state.meter.about.readings.filter(({ id }) => id !== reading);
      return changeAbout({ readings });
    },

    /** @param {string[]} readings @param {boolean} baseline @param {string} [since] of a first test */
    mark: (readings, baseline, since) =>
      send([{ command: { do: "mark_baseline", readings, baseline, ...(since ? { first_test_since: since } : {}) } }]),
  };
};

/** Which loudspeaker a reading by ear is of. @param {Pick<LooseReading, "quantity" | "where">} one */
const heardAt = ({ quantity, where }) => (quantity === "plays" ? where.point : undefined);

/** @typedef {ReturnType<typeof makeMeterKeep>} MeterKeep */
