/**
 * The last states of each job: to go back to, and to find the state two copies grew from. They
 * are written and trimmed in the transaction that keeps the job, so they can never disagree.
 */

/** @typedef {import("./state").Job} Job */
/** @typedef {import("./state").JobRecord} JobRecord */
/** @typedef {import("./state").PastState} PastState */

export const MOST_STATES = 50;

/** Every state of a job, in the order they were made. @param {string} id */
export const rangeOf = (id) => IDBKeyRange.bound([id], [id, []]);

/**
 * Put the new state in, and take out those beyond the last fifty.
 * @param {any} states the object store, inside a transaction that writes
 * @param {JobRecord} record
 * @param {{words: string, theirs?: Job | undefined}} how
 */
export const putState = async (states, { id, job, seen }, { words, theirs }) => {
  const at = new Date().toISOString();
  const { counts, verdict, headline } = seen.faces.job;
  /** @type {PastState} */
  const now = { job, at, words, counts, verdict, headline, theirs: false };
  states.put(now, [id, job.rev, "mine"]);
  if (theirs) {
    const came = { job: theirs, at, words, counts: "", verdict: null, headline: "", theirs: true };
    states.put(came, [id, theirs.rev, "theirs"]);
  }
  const keys = await states.getAllKeys(rangeOf(id));
  for (const key of keys.slice(0, -MOST_STATES)) states.delete(key);
};

/** The states a person can go back to. @param {PastState[]} states */
export const ownStates = (states) => states.filter(({ theirs }) => !theirs);
