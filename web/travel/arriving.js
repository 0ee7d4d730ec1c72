/** What came from elsewhere: read by the core, looked at beside what is kept here, never taken in. */

import { NoAnswer, Overtaken, Refused } from "../door.js";
import { say } from "../say.js";
import { findCommon } from "./common.js";

/** @typedef {import("../state").Arrived} Arrived */
/** @typedef {import("../state").Came} Came */
/** @typedef {import("../state").Job} Job */

const MOST_FILE_BYTES = 8_000_000;
/** @type {Pick<Arrived, "problem" | "came" | "refused" | "picked">} */
const NOTHING = { problem: null, came: [], refused: [], picked: null };

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

  /** @param {string} text @returns {Promise<Pick<Arrived, "came" | "refused">>} */
  const readFile = async (text) => {
    const { jobs, refused } = await door.ask("open_all", { text });
    const { prints } = jobs.length ? await door.ask("prints", { jobs }) : { prints: [] };
    /** @type {Came[]} */
    const came = [];
    for (const [at, job] of jobs.entries()) {
      const print = prints[at] ?? "";
      came.push({ job, seen: null, made_by: null, print, ...(await standing(job, print)) });
    }
    return { came, refused: refused.map(({ name, problem }) => ({ name, words: problem.words })) };
  };

  /** Several files side by side: a bad one costs no other. @param {File[]} files */
  const readSeveral = async (files) => {
    const found = { came: /** @type {Came[]} */ ([]), refused: /** @type {Arrived["refused"]} */ ([]) };
    for (const file of files) {
      /** @type {Partial<Arrived>} */
      const one = await file.text().then(readFile).catch(problemOf);
      const { words } = one.problem ?? {};
      found.came.push(...(one.came ?? []));
      found.refused.push(...(words ? [{ name: file.name, words }] : (one.refused ?? [])));
    }
    return found;
  };

  /** One that came alone is looked at closely. @param {Pick<Arrived, "came" | "refused">} found */
  const looked = async ({ came, refused }) => {
    const [only] = came;
    if (!only || came.length > 1 || refused.length) return { came, refused, picked: null };
    only.seen = await door.ask("findings", { job: only.job });
    return { came, refused, picked: 0 };
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

  /** @param {Arrived["from"]} from @param {string} text @param {Promise<Partial<Arrived>>} reading */
  const begin = async (from, text, reading) => {
    const number = ++latest;
    store.change({ arrived: { from, text, reading: true, ...NOTHING } });
    const found = await reading.catch(problemOf);
    if (number === latest) change({ ...found, reading: false });
  };

  return {
    /** @param {string} text */
    read(text) {
      const looksLikeFile = /^\s*\{/.test(text);
      return begin("link", text, looksLikeFile ? readFile(text).then(looked) : readLink(text));
    },

    /** @param {File[]} files */
    async readFiles(files) {
      if (files.reduce((sum, { size }) => sum + size, 0) > MOST_FILE_BYTES) return this.refuse("large");
      const [only] = files;
      const reading = only && files.length === 1 ? only.text().then(readFile) : readSeveral(files);
      return begin("file", "", reading.then(looked));
    },

    /** Say that what came cannot be looked at. @param {"large" | "lost"} why */
    refuse(why) {
      latest += 1;
      const words = say(why === "large" ? "jobs.file_too_large" : "open.shared_lost");
      const problem = { words, remedy: null };
      store.change({ arrived: { from: "file", text: "", reading: false, ...NOTHING, problem } });
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
