/** What touches on the meter do: say where and what, type what it shows, keep it, take it back. */

import { withToday } from "../manner.js";
import { firstEntry, placeOf, readingsOf } from "../meter_first.js";
import { say } from "../say.js";

/** @typedef {import("../meter_state").Entry} Entry */
/** @typedef {import("../state").Command} Command */

const makeKey = () => crypto.getRandomValues(new Uint32Array(2)).join("-");
const MOST_SIGNS = 10;

/** In which field of the command a typed number of each quantity goes. */
const FIELDS = {
  z_1k_ohm: "read_ohm",
  dc_ohm: "read_ohm",
  earth_ohm: "read_ohm",
  volts: "read_v",
  amps: "read_a",
  plays: "heard",
};

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const meterActions = ({ store, edits, keeper }) => {
  /** @param {Partial<Entry>} part */
  const enter = (part) => {
    const { meter } = store.read();
    store.change({ meter: { ...meter, entry: { ...meter.entry, ...part } } });
  };

  /** @param {Command} command @param {Record<string, string>} [typed] */
  const send = (command, typed = {}) =>
    edits.send({ key: makeKey(), words: `do.${command.do}`, steps: [{ command, typed }], apart: true });

  /** Where it is taken, as the command names it. */
  const whereOf = () => {
    const [family = "", id = ""] = placeOf(store.read()).split(":");
    return { [family]: id };
  };

  /** @param {Partial<Command>} said @param {Record<string, string>} [typed] */
  const keep = async (said, typed = {}) => {
    const { meter, manner } = store.read();
    const { looking, lifted, quantity, controls } = meter.entry;
    const where = whereOf();
    const { hand, first } = await keeper.takeNumbers(1);
    const { today: at } = withToday(manner);
    enter({ text: "" });
    const reading = { id: `${hand}${first}`, at, where, looking, lifted, quantity, controls };
    return send({ do: "keep_reading", ...reading, ...said }, typed);
  };

  return {
    "meter.sign": ({ data: { sign = "" } }) => {
      const { text } = store.read().meter.entry;
      if (text.length < MOST_SIGNS) enter({ text: text + sign });
    },
    "meter.erase": () => enter({ text: store.read().meter.entry.text.slice(0, -1) }),
    "meter.type": ({ text }) => enter({ text }),
    "meter.place": ({ text }) => enter({ place: text, looking: "out", lifted: [] }),
    "meter.quantity": ({ text }) => enter({ quantity: /** @type {Entry["quantity"]} */ (text), text: "" }),
    "meter.controls": ({ text }) => enter({ controls: /** @type {Entry["controls"]} */ (text) }),
    "meter.complaint": ({ text }) =>
      store.change({ meter: { ...store.read().meter, complaint: text, diagnosis: null } }),

    "meter.enter": () => {
      const { text, quantity } = store.read().meter.entry;
      if (text.trim()) return keep({}, { [FIELDS[quantity]]: text });
    },
    "meter.over_range": () => keep({ over_range: true }),
    "meter.heard": ({ data: { heard = "" } }) => {
      if (!placeOf(store.read()).startsWith("point:")) {
        return store.change({ notice: { words: say("meter.pick_loudspeaker"), bad: true } });
      }
      return keep({ heard });
    },

    "meter.drop": ({ data: { reading = "" } }) => send({ do: "drop_reading", reading }),

    "meter.baseline": () => {
      const { now } = readingsOf(store.read());
      const baseline = !now.every((reading) => reading.baseline);
      return send({ do: "mark_baseline", readings: now.map(({ id }) => id), baseline });
    },

    /** Take what is proposed: the next reading, or one of the first test. */
    "meter.take": ({ data: { proposal = "{}" } }) => {
      const { where = {}, looking = "out", lifted = [], quantity, controls } = JSON.parse(proposal);
      const [[family, id] = ["", ""]] = Object.entries(where);
      const place = id ? `${family}:${id}` : "";
      const { quantity: usual, controls: stand } = firstEntry;
      enter({ place, looking, lifted, quantity: quantity ?? usual, controls: controls ?? stand, text: "" });
    },
  };
};
