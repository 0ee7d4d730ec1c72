/** What came from elsewhere: read by the core, looked at beside what is kept here, never taken in. */

import { NoAnswer, Overtaken, Refused } from "../door.js";
import { say } from "../say.js";
import { findCommon } from "./common.js";

/** @typedef {import("../state").Arrived} Arrived */
/** @typedef {import("../state").Came} Came */
/** @typedef {import("../state").Job} Job */

const MOST_FILE_BYTES = 8_000_000;

/** @param {import("../shapes").House} house */
export const makeArriving = (house) => {
  const { store, door, keeper } = house;
  let latest = 0;

  /** @param {Partial<Arrived>} part */
  const change = (part) => {
    const { arrived } = store.read();
    if (arrived) store.change({ arrived: { ...arrived, ...part } });
  };

  /**
   * The job here that says the very same: the one of the same id, else any other.
   * @param {Job} job @param {string} print
   */
  const findSame = async (job, print) => {
    const all = await keeper.listJobs();
    const ours = all.filter(({ id }) => id === job.id);
    const lines = ours.length ? ours : all.filter(({ name }) => name === job.name);
    const records = await Promise.all(lines.map(({ id }) => keeper.readJob(id)));
    const jobs = records.flatMap((record) => (record ? [record.job] : []));
    if (!jobs.length) return null;
    const { prints } = await door.ask("prints", { jobs });
    return jobs.find((_, at) => prints[at] === print)?.id ?? null;
  };

  /** How a job stands to what is kept here. @param {Job} job @param {string} print */
  const standing = async (job, print) => {
    const none = { comparison: null, base: null };
    const same = await findSame(job, print);
    if (same) return { here: /** @type {const} */ ("same"), mine: same, ...none };
    const mine = (await keeper.readJob(job.id))?.job;
    if (!mine) return { here: /** @type {const} */ ("new"), mine: null, ...none };
    const base = await findCommon(house, mine, job);
    const comparison = await door.ask("compare", { mine, theirs: job, base });
    return { here: /** @type {const} */ ("other"), mine: mine.id, comparison, base };
  };

  /** @param {string} text @returns {Promise<Partial<Arrived>>} */
  const readLink = async (text) => {
    const { job, made_by, print, ...seen } = await door.ask("read_link", { text });
    const came = { job, seen, made_by, print, ...(await standing(job, print)) };
    return { came: [came], picked: 0 };
  };

  /** @param {string} text @returns {Promise<Partial<Arrived>>} */
  const readFile = async (text) => {
    const { jobs, refused } = await door.ask("open_all", { text });
    const { prints } = jobs.length ? await door.ask("prints", { jobs }) : { prints: [] };
    /** @type {Came[]} */
    const came = [];
    for (const [at, job] of jobs.entries()) {
      const print = prints[at] ?? "";
      came.push({ job, seen: null, made_by: null, print, ...(await standing(job, print)) });
    }
    const [only] = came;
    if (only && came.length === 1) only.seen = await door.ask("findings", { job: only.job });
    return {
      came,
      refused: refused.map(({ name, problem }) => ({ name, words: problem.words })),
      picked: came.length === 1 && !refused.length ? 0 : null,
    };
  };

  /** @param {unknown} error @returns {Partial<Arrived>} */
  const problemOf = (error) => {
    if (error instanceof Refused) {
      const { words, remedy } = error.problem;
      return { problem: { words, remedy } };
    }
    if (!(error instanceof NoAnswer || error instanceof Overtaken)) throw error;
    return { problem: { words: say("engine.no_answer"), remedy: null } };
  };

  return {
    /** @param {"link" | "file"} from @param {string} text */
    async read(from, text) {
      const number = ++latest;
      const blank = { problem: null, came: [], refused: [], picked: null };
      store.change({ arrived: { from, text, reading: true, ...blank } });
      const looksLikeFile = from === "file" || /^\s*\{/.test(text);
      const found = await (looksLikeFile ? readFile(text) : readLink(text)).catch(problemOf);
      if (number === latest) change({ ...found, reading: false });
    },

    /** @param {File} file */
    async readFile(file) {
      if (file.size <= MOST_FILE_BYTES) return this.read("file", await file.text());
      latest += 1;
      const problem = { words: say("jobs.file_too_large"), remedy: null };
      const blank = { reading: false, came: [], refused: [], picked: null };
      store.change({ arrived: { from: "file", text: "", problem, ...blank } });
    },

    /** Look closer at one of several. @param {number} at */
    async pick(at) {
      change({ picked: at });
      const one = store.read().arrived?.came[at];
      if (!one || one.seen) return;
      const seen = await door.ask("findings", { job: one.job });
      const came = store.read().arrived?.came.map((each) => (each.job === one.job ? { ...each, seen } : each));
      if (came) change({ came });
    },

    /** Nothing of it is wanted any more. */
    forget() {
      latest += 1;
      store.change({ arrived: null, pasted: "" });
    },
  };
};
