/** What touches on the list of jobs do: new, pick, copy, delete. */

import { goTo } from "../address.js";
import { NoAnswer, Refused } from "../door.js";
import { say } from "../say.js";

/** @typedef {import("../state").Job} Job */
/** @typedef {import("../state").Seen} Seen */

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const jobsActions = ({ store, door, keeper, tabs, desk, drafts }) => {
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

    "jobs.ask_remove": ({ data: { job = "", name = "" } }) =>
      store.change({ removing: { id: job, name } }),

    "jobs.keep_it": () => store.change({ removing: null }),

    "jobs.remove": async () => {
      const { removing, desk: open } = store.read();
      if (!removing) return;
      await keeper.removeJob(removing.id);
      await drafts.forget(removing.id);
      tabs.tell(removing.id);
      const jobs = await keeper.listJobs();
      store.change({ jobs, removing: null, bench: null });
      if (open?.id === removing.id) store.change({ desk: null });
      goTo({ screen: "jobs" });
    },
  };
};
