/** What touches on the list of jobs do: new, open, copy, delete, to a file and from a file. */

import { goTo } from "../address.js";
import { NoAnswer, Refused } from "../door.js";
import { offerFile } from "../files.js";
import { say } from "../say.js";

/** @typedef {import("../state").Job} Job */
/** @typedef {import("../state").Seen} Seen */

const MOST_FILE_BYTES = 4_000_000;

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const jobsActions = ({ store, door, keeper, desk }) => {
  /** @param {string} words */
  const complain = (words) => store.change({ notice: { words, bad: true } });

  /**
   * Ask, and show what stands in the way.
   * @template {keyof import("../answers").Answers} K
   * @param {K} ask @param {unknown} body
   */
  const tryAsk = async (ask, body) => {
    try {
      return await door.ask(ask, body);
    } catch (error) {
      if (error instanceof Refused) {
        const { words, remedy } = error.problem;
        complain(remedy ? say("edit.refused", { words, remedy }) : words);
      } else if (error instanceof NoAnswer) complain(say("engine.no_answer"));
      else throw error;
      return null;
    }
  };

  const newId = async () => {
    const { hand, first } = await keeper.takeNumbers(1);
    return `${hand}${first}`;
  };

  /** @param {Job} job @param {Seen} seen */
  const keepNew = async (job, seen) => {
    const record = { id: job.id, job, seen, manner: "", waiting: [], undo: [], redo: [] };
    await keeper.keepJob(record, { over: null });
    store.change({ jobs: await keeper.listJobs(), bench: null });
    goTo({ screen: "job", job: job.id });
  };

  /**
   * Take in a job from outside. One that is here already is never overwritten: it is opened
   * when it is the same, else the newcomer gets an id of its own.
   * @param {string} text @param {{openOurs?: boolean}} [how] whether ours is wanted in any case
   */
  const takeIn = async (text, { openOurs } = {}) => {
    const answer = await tryAsk("open_saved", { text });
    if (!answer) return;
    const { job, ...seen } = answer;
    const here = await keeper.readJob(job.id);
    if (!here) return keepNew(job, seen);
    if (openOurs || JSON.stringify(here.job) === JSON.stringify(job)) {
      return goTo({ screen: "job", job: job.id });
    }
    const name = say("jobs.from_file", { name: job.name });
    return keepNew({ ...job, id: await newId(), name }, seen);
  };

  /** @param {string} id */
  const jobOf = async (id) => {
    const { desk: open } = store.read();
    return open?.id === id ? open.job : (await keeper.readJob(id))?.job;
  };

  return {
    "jobs.new": async () => {
      const name = say("jobs.new_name");
      const answer = await tryAsk("start", { id: await newId(), name });
      if (!answer) return;
      const { job, ...seen } = answer;
      return keepNew(job, seen);
    },

    "jobs.pick": ({ data: { job = "" } }) => {
      const { bench } = store.read();
      if (bench?.is === "thing" && bench.id === job) return store.change({ bench: null });
      return desk.open(job).then(() => store.change({ bench: { is: "thing", id: job } }));
    },

    "jobs.copy": async ({ data: { job: id = "" } }) => {
      const job = await jobOf(id);
      if (!job) return;
      const copy = { ...job, id: await newId(), name: say("jobs.copied", { name: job.name }) };
      const seen = await tryAsk("findings", { job: copy });
      if (seen) return keepNew(copy, seen);
    },

    "jobs.save": async ({ data: { job: id = "" } }) => {
      const job = await jobOf(id);
      if (!job) return;
      if (store.read().engine.stage === "failed") {
        return offerFile(JSON.stringify(job), `${job.id}.json`);
      }
      const answer = await tryAsk("save", { job });
      if (answer) return offerFile(answer.text, answer.file_name);
    },

    "jobs.open_file": async ({ files }) => {
      const file = files?.[0];
      if (!file) return;
      if (file.size > MOST_FILE_BYTES) return complain(say("jobs.file_too_large"));
      return takeIn(await file.text());
    },

    "jobs.demo": async () => {
      const response = await fetch("./demo.json").catch(() => null);
      if (!response?.ok) return complain(say("jobs.no_demo"));
      return takeIn(await response.text(), { openOurs: true });
    },

    "jobs.ask_remove": ({ data: { job = "", name = "" } }) =>
      store.change({ removing: { id: job, name } }),

    "jobs.keep_it": () => store.change({ removing: null }),

    "jobs.remove": async () => {
      const { removing, desk: open } = store.read();
      if (!removing) return;
      await keeper.removeJob(removing.id);
      const jobs = await keeper.listJobs();
      store.change({ jobs, removing: null, bench: null });
      if (open?.id === removing.id) store.change({ desk: null });
      goTo({ screen: "jobs" });
    },
  };
};
