/**
 * Keeps what the person did, in IndexedDB. Every write is one strict transaction, and a write
 * is done only when it is complete on the device, so "kept" is never said too early.
 *
 * Stores: `jobs` whole records; `lines` what the list of jobs shows; `past` states for undo;
 * `states` the last states of each job, for its history and for merging; `desk` single values
 * (the tally, the hand and its counter).
 */

import { putState, rangeOf } from "./states.js";
import { openDB } from "./vendor/idb/index.js";

/** @typedef {import("./state").JobRecord} JobRecord */
/** @typedef {import("./state").JobLine} JobLine */
/** @typedef {import("./state").Job} Job */
/** @typedef {import("./state").Act} Act */

const STORES = ["jobs", "lines", "past", "states", "desk"];
const LETTERS = "abcdefghjkmnpqrstuvwxyz";
const DIGITS = "23456789";
/** Each half-filled form is a value of its own, so that two tabs write none over the other's. */
const DRAFT = "draft ";

/** A write that would have replaced a newer state of the same job. */
export class Stale extends Error {}

/** @returns {Promise<import("./vendor/idb/index.js").IDBPDatabase>} */
const open = () =>
  openDB("rungline", 2, {
    upgrade(base, before) {
      if (before < 1) {
        base.createObjectStore("jobs", { keyPath: "id" });
        base.createObjectStore("lines", { keyPath: "id" });
        base.createObjectStore("past");
        base.createObjectStore("desk");
      }
      if (before < 2) base.createObjectStore("states");
    },
    // A newer page wants to open it: an old one must not stand in its way.
    blocking: () => letGo(true),
    // Some browsers drop the connection; the next question opens it anew.
    terminated: () => letGo(false),
  });

/** @type {Promise<import("./vendor/idb/index.js").IDBPDatabase> | null} */
let opened = null;

/** @param {boolean} close */
const letGo = (close) => {
  if (close) opened?.then((each) => each.close());
  opened = null;
};
const base = () => {
  opened ??= open();
  opened.catch(() => (opened = null));
  return opened;
};

/** @param {string[]} stores */
const begin = async (stores) =>
  (await base()).transaction(stores, "readwrite", { durability: "strict" });

/** Three characters of chance: a letter, a digit, a letter. Made once per device. */
const makeHand = () => {
  const [one = 0, two = 0, three = 0] = crypto.getRandomValues(new Uint32Array(3));
  const pick = (/** @type {string} */ from, /** @type {number} */ at) => from[at % from.length];
  return `${pick(LETTERS, one)}${pick(DIGITS, two)}${pick(LETTERS, three)}`;
};

/** @param {JobRecord} record @returns {JobLine} */
const lineOf = ({ id, job, seen }) => ({
  id,
  name: job.name,
  counts: seen.faces.job.counts,
  verdict: seen.faces.job.verdict,
  headline: seen.faces.job.headline,
  touched: new Date().toISOString(),
});

export const keeper = {
  /** @param {string} key @returns {Promise<any>} */
  async read(key) {
    return (await base()).get("desk", key);
  },

  /** @param {string} key @param {unknown} value */
  async keep(key, value) {
    const writing = await begin(["desk"]);
    writing.objectStore("desk").put(value, key);
    await writing.done;
  },

  /**
   * Numbers never given before on this device, for new ids.
   * @param {number} count
   * @returns {Promise<{hand: string, first: number}>}
   */
  async takeNumbers(count) {
    const writing = await begin(["desk"]);
    const desk = writing.objectStore("desk");
    const hand = (await desk.get("hand")) ?? makeHand();
    const first = (await desk.get("counter")) ?? 1;
    desk.put(hand, "hand");
    desk.put(first + count, "counter");
    await writing.done;
    return { hand, first };
  },

  /** @returns {Promise<JobLine[]>} */
  async listJobs() {
    const lines = await (await base()).getAll("lines");
    return lines.sort((one, other) => other.touched.localeCompare(one.touched));
  },

  /** @param {string} id @returns {Promise<JobRecord | undefined>} */
  async readJob(id) {
    return (await base()).get("jobs", id);
  },

  /**
   * Keep a job, with the state it had before when that is to be undone to. `over` is the
   * revision this one grew from: when another one lies there, nothing is written. `words` say
   * what made this state; `theirs` is a state from elsewhere that went into it.
   * @param {JobRecord} record
   * @param {{over: number | null, past?: {key: string, job: Job}, gone?: string[],
   *   words?: string, theirs?: Job}} how
   */
  async keepJob(record, { over, past, gone = [], words = "do.start", theirs }) {
    const writing = await begin(["jobs", "lines", "past", "states"]);
    const jobs = writing.objectStore("jobs");
    const there = await jobs.get(record.id);
    if ((there?.job.rev ?? null) !== over) {
      writing.abort();
      await writing.done.catch(() => {});
      throw new Stale(record.id);
    }
    jobs.put(record);
    writing.objectStore("lines").put(lineOf(record));
    if (past) writing.objectStore("past").put(past.job, past.key);
    for (const key of gone) writing.objectStore("past").delete(key);
    await putState(writing.objectStore("states"), record, { words, theirs });
    await writing.done;
  },

  /**
   * Keep what still waits to be done to a job, before it is done.
   * @param {string} id
   * @param {Act[]} waiting
   */
  async keepWaiting(id, waiting) {
    const writing = await begin(["jobs"]);
    const jobs = writing.objectStore("jobs");
    const record = await jobs.get(id);
    if (record) jobs.put({ ...record, waiting });
    await writing.done;
  },

  /** @returns {Promise<import("./state").Draft[]>} */
  async readDrafts() {
    return (await base()).getAll("desk", IDBKeyRange.bound(DRAFT, `${DRAFT}\uffff`));
  },

  /** What stands in a half-filled form; null: nothing is to be kept of it. @param {string} key @param {import("./state").Draft | null} draft */
  async keepDraft(key, draft) {
    const writing = await begin(["desk"]);
    if (draft) writing.objectStore("desk").put(draft, DRAFT + key);
    else writing.objectStore("desk").delete(DRAFT + key);
    await writing.done;
  },

  /** @param {string} key @returns {Promise<Job | undefined>} */
  async readPast(key) {
    return (await base()).get("past", key);
  },

  /** The last states of a job, the newest first. @param {string} id */
  async readStates(id) {
    /** @type {import("./state").PastState[]} */
    const states = await (await base()).getAll("states", rangeOf(id));
    return states.reverse();
  },

  /** @param {string} id */
  async removeJob(id) {
    const writing = await begin(STORES);
    writing.objectStore("jobs").delete(id);
    writing.objectStore("lines").delete(id);
    writing.objectStore("past").delete(IDBKeyRange.bound(`${id}.`, `${id}/`));
    writing.objectStore("states").delete(rangeOf(id));
    await writing.done;
  },
};

/** @typedef {typeof keeper} Keeper */
