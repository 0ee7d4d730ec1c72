/** What touches do where something is wrong with a line nobody has drawn: a count is enough. */

import { goTo } from "../address.js";
import { Overtaken, Refused } from "../door.js";
import { firstAbout, firstEntry } from "../meter_first.js";
import { keepingStep, makeMeterKeep } from "../meter_keep.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../meter_state").About} About */
/** @typedef {import("../state").Job} Job */
/** @typedef {Pick<import("../meter_state").MeterState, "about" | "complaint" | "diagnosis" | "expected" | "sketch">} Standing */

/** Without these nothing can be begun. */
const NEEDED = /** @type {const} */ (["count", "tap_w", "line_v"]);
const TYPED = /** @type {const} */ (["count", "tap_w", "line_v", "amplifier_w"]);

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const wrongActions = ({ store, door, edits, keeper }) => {
  const { changeAbout } = makeMeterKeep({ store, edits, keeper });

  /** @param {Partial<import("../meter_state").MeterState>} part */
  const set = (part) => store.change({ meter: { ...store.read().meter, ...part } });

  /** What was cleared last, for who did not mean it. @type {Standing | null} */
  let cleared = null;
  /** What stood there before the count was opened to be changed. @type {Standing | null} */
  let before = null;

  const standing = () => {
    const { about, complaint, diagnosis, expected, sketch } = store.read().meter;
    return { about, complaint, diagnosis, expected, sketch };
  };

  /** What goes can be put back. @param {Standing} was @param {string} words */
  const offerBack = (was, words) => {
    cleared = was;
    store.change({ notice: { words, bad: false, again: "wrong.put_back" } });
  };

  /** Ids of this device in place of those of a line made from a count. @param {Job} job */
  const ownIds = async (job) => {
    const ids = [job.id, ...job.zones.flatMap(({ id, line }) => [id, ...line.map((one) => one.id)])];
    ids.push(...job.amplifiers.flatMap(({ id, outputs }) => [id, ...outputs.map((one) => one.id)]));
    const { hand, first } = await keeper.takeNumbers(ids.length);
    return new Map(ids.map((id, place) => [id, `${hand}${first + place}`]));
  };

  /** @param {Map<string, string>} own @param {unknown} value @returns {any} */
  const renamed = (own, value) => {
    if (typeof value === "string") return own.get(value) ?? value;
    if (Array.isArray(value)) return value.map((each) => renamed(own, each));
    if (!value || typeof value !== "object") return value;
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, renamed(own, one)]));
  };

  /** @param {string} field @param {string} words @param {string} remedy */
  const refuse = (field, words, remedy) => {
    set({ about: { ...store.read().meter.about, problem: { field, words, remedy } } });
    document.getElementById(`wrong-${field}`)?.focus();
  };

  return {
    "wrong.type": ({ data: { field = "" }, text }) => changeAbout({ [field]: text, problem: null }),
    "wrong.volts": ({ data: { text = "" } }) => changeAbout({ line_v: text, problem: null }),

    "wrong.start": async () => {
      const { about } = store.read().meter;
      const missing = NEEDED.find((name) => !about[name].trim());
      if (missing) return refuse(missing, sayOne("wrong", `missing_${missing}`), "");
      const said = Object.fromEntries(TYPED.map((name) => [name, about[name]]));
      const was = before;
      before = null;
      if (was && TYPED.every((name) => was.about[name] === about[name])) {
        const { about: same, ...answered } = was;
        set(answered);
        return changeAbout({ ...same, on: true, problem: null });
      }
      try {
        const answer = await door.ask("expected", { about: said }, "expected");
        const job = /** @type {Job} */ (/** @type {unknown} */ (answer.job));
        set({ entry: { ...firstEntry, quantity: "plays" }, diagnosis: null, expected: null });
        if (was?.about.readings.length) offerBack(was, say("wrong.other_line"));
        return changeAbout({ on: true, readings: [], next: 1, job, problem: null });
      } catch (error) {
        if (error instanceof Overtaken) return;
        if (!(error instanceof Refused)) throw error;
        const { where, words, remedy } = error.problem;
        refuse((where.field ?? "").replace("about.", ""), words, remedy ?? "");
      }
    },

    "wrong.change": () => {
      before = standing();
      set({ diagnosis: null, expected: null, sketch: null });
      return changeAbout({ on: false });
    },

    /** All that was typed and read goes, and can be put back. */
    "wrong.clear": () => {
      const { about } = store.read().meter;
      offerBack(standing(), say("wrong.cleared"));
      // The next search begins with what is silent, however the last loudspeaker of this one played.
      set({ diagnosis: null, expected: null, sketch: null, complaint: "", brush: "silent" });
      return changeAbout({ ...firstAbout, line_v: about.line_v });
    },

    "wrong.put_back": () => {
      if (!cleared) return;
      const { about, ...answered } = cleared;
      cleared = null;
      set(answered);
      store.change({ notice: null });
      return changeAbout(about);
    },

    /** Keep it as a job, its readings with it. */
    "wrong.keep": async () => {
      const { about } = store.read().meter;
      if (!about.job) return;
      const own = await ownIds(about.job);
      let job = renamed(own, about.job);
      const { hand, first } = await keeper.takeNumbers(about.readings.length);
      for (const [place, reading] of about.readings.entries()) {
        const { where, lifted, instrument: name = "", tolerance_pct, temperature_c, leads_ohm, ...one } = reading;
        const stood = { ...one, where: renamed(own, where), lifted: renamed(own, lifted) };
        const said = Object.entries({ tolerance_pct, temperature_c, leads_ohm }).filter(([, text]) => text);
        const typed = /** @type {Record<string, string>} */ (Object.fromEntries(said));
        const step = keepingStep({ ...stood, id: `${hand}${first + place}` }, { name, typed });
        ({ job } = await door.ask("edit", { job, ...step }));
      }
      const seen = await door.ask("findings", { job });
      const record = { id: job.id, job, seen, manner: "", waiting: [], undo: [], redo: [] };
      await keeper.keepJob(record, { over: null });
      store.change({ jobs: await keeper.listJobs() });
      goTo({ screen: "zone", job: job.id, zone: job.zones[0].id, view: "meter" });
    },
  };
};
