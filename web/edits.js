/**
 * Changes to the open job, one after another. An act is kept before it is done, so nothing the
 * person did is lost when the engine is not ready, breaks, or the battery dies.
 */

import { NoAnswer, Overtaken, Refused } from "./door.js";
import { Stale } from "./keeper.js";
import { say } from "./say.js";

/** @typedef {import("./state").Act} Act */
/** @typedef {import("./state").Desk} Desk */
/** @typedef {import("./state").Job} Job */
/** @typedef {import("./state").JobRecord} JobRecord */
/** @typedef {import("./state").Seen} Seen */
/** @typedef {Pick<JobRecord, "undo" | "redo">} Ways */

const MOST_UNDO = 60;

/** The device did not take what the person did. */
export class NotKept extends Error {}

/** @param {Job} job */
const pastKey = (job) => `${job.id}.${job.rev}`;

/**
 * What undo and redo hold after an act, and which past states nobody can reach any more.
 * @param {Desk} desk @param {Act} act @param {string} now
 * @returns {Ways & {gone: string[]}}
 */
export const nextWays = ({ undo, redo }, act, now) => {
  if (act.back === "undo") {
    return { undo: undo.slice(0, -1), redo: [...redo, now], gone: undo.slice(-1) };
  }
  if (act.back === "redo") {
    return { undo: [...undo, now], redo: redo.slice(0, -1), gone: redo.slice(-1) };
  }
  const longer = [...undo, now];
  return {
    undo: longer.slice(-MOST_UNDO),
    redo: [],
    gone: [...redo, ...longer.slice(0, -MOST_UNDO)],
  };
};

/** @param {Desk} desk @returns {JobRecord} */
const recordOf = ({ id, job, seen, manner, waiting, undo, redo }) => ({
  id,
  job,
  seen,
  manner,
  waiting,
  undo,
  redo,
});

/** @param {import("./shapes").House} house */
export const makeEdits = ({ store, door, keeper, tabs }) => {
  let running = false;
  let keeping = Promise.resolve();

  /** @param {string} id @returns {Desk | null} */
  const deskOf = (id) => {
    const { desk } = store.read();
    return desk?.id === id ? desk : null;
  };

  /** @param {string} id @param {Partial<Desk>} part */
  const changeDesk = (id, part) => {
    const desk = deskOf(id);
    if (desk) store.change({ desk: { ...desk, ...part } });
  };

  /** @param {Desk} desk @param {Act} act */
  const stepsOf = async (desk, act) => {
    if (!act.back) return act.steps;
    const key = desk[act.back].at(-1);
    const past = key ? await keeper.readPast(key) : undefined;
    return past ? [{ command: { do: "restore", past } }] : [];
  };

  /**
   * Ask the core for each step in turn; the job of one is what the next starts from.
   * @param {Desk} desk @param {Act} act
   * @returns {Promise<{job: Job, seen: Seen} | null>}
   */
  const perform = async (desk, act) => {
    let { job } = desk;
    let seen = null;
    for (const { command, typed = {} } of await stepsOf(desk, act)) {
      ({ job, ...seen } = await door.ask("edit", { job, command, typed }));
    }
    return seen && { job, seen };
  };

  /** @param {Desk} before @param {Act} act @param {{job: Job, seen: Seen}} landed */
  const land = async (before, act, { job, seen }) => {
    const desk = deskOf(before.id);
    if (!desk) return;
    const key = pastKey(before.job);
    const { gone, ...ways } = nextWays(desk, act, key);
    const waiting = desk.waiting.filter((other) => other.key !== act.key);
    const next = { ...desk, job, seen, waiting, ...ways };
    store.change({ desk: { ...next, kept: "keeping" } });
    await keeper.keepJob(recordOf(next), {
      over: before.job.rev,
      past: { key, job: before.job },
      gone,
    });
    changeDesk(job.id, { kept: "kept" });
    tabs.tell(job.id);
    store.change({ jobs: await keeper.listJobs() });
  };

  /** @param {Desk} desk @param {Act} act */
  const drop = async (desk, act) => {
    const now = deskOf(desk.id);
    if (!now) return;
    const waiting = now.waiting.filter((other) => other.key !== act.key);
    changeDesk(desk.id, { waiting, kept: "kept" });
    await keeper.keepWaiting(desk.id, waiting);
  };

  /** @param {Desk} desk @param {Act} act @param {unknown} error */
  const fail = async (desk, act, error) => {
    if (error instanceof Overtaken) return;
    if (error instanceof Refused) {
      showRefusal(act, error.problem);
      return drop(desk, act);
    }
    if (error instanceof Stale) {
      const record = await keeper.readJob(desk.id);
      if (record) changeDesk(desk.id, { ...record, waiting: [], kept: "kept" });
      return store.change({ notice: { words: say("edit.stale"), bad: true } });
    }
    if (error instanceof NoAnswer) {
      store.change({ notice: { words: say("engine.no_answer"), bad: true } });
      return drop(desk, act);
    }
    changeDesk(desk.id, { kept: "failed" });
    store.change({ notice: { words: say("edit.not_kept"), bad: true } });
  };

  /** @param {Act} act @param {import("./state").Problem} problem */
  const showRefusal = (act, { words, where, remedy }) => {
    const { bench } = store.read();
    if (bench?.is !== "form" || bench.form.context.act !== act.key) {
      const both = remedy ? say("edit.refused", { words, remedy }) : words;
      store.change({ notice: { words: both, bad: true } });
      return;
    }
    const problem = { field: where.field ?? null, words, remedy };
    store.change({ bench: { is: "form", form: { ...bench.form, busy: false, problem } } });
  };

  /** @param {Act} act */
  const closeFormOf = (act) => {
    const { bench } = store.read();
    if (bench?.is !== "form" || bench.form.context.act !== act.key) return;
    const { thing } = bench.form.context;
    store.change({ bench: thing ? { is: "thing", id: thing } : null });
  };

  /** @param {Desk} desk @param {Act} act */
  const doAct = async (desk, act) => {
    try {
      const landed = await perform(desk, act);
      if (!landed) return await drop(desk, act);
      closeFormOf(act);
      await land(desk, act, landed);
    } catch (error) {
      await fail(desk, act, error);
    }
  };

  /** Only now may the page say that it is kept. @param {string} id @param {string} key */
  const markKept = (id, key) => {
    const waiting = deskOf(id)?.waiting.map((each) =>
      each.key === key ? { ...each, kept: true } : each,
    );
    if (waiting) changeDesk(id, { waiting });
  };

  /** Do what waits, in order, until nothing waits. */
  const run = async () => {
    if (running) return;
    running = true;
    for (;;) {
      const { desk } = store.read();
      const act = desk?.waiting[0];
      if (!desk || !act || desk.pen !== "mine" || desk.kept === "failed") break;
      await doAct(desk, act);
    }
    running = false;
  };

  return {
    run,

    /** @param {Act} act */
    async send(act) {
      const { desk } = store.read();
      if (!desk) return;
      if (desk.pen === "theirs") {
        store.change({ notice: { words: say("tabs.reads_only"), bad: true } });
        return;
      }
      const waiting = [...desk.waiting, act];
      store.change({ desk: { ...desk, waiting, kept: "keeping" }, notice: null });
      keeping = keeper.keepWaiting(desk.id, waiting);
      run();
      await keeping;
      markKept(desk.id, act.key);
    },

    /** Wait until every act is at least kept; fails when one could not be. */
    async settle() {
      await keeping;
      if (store.read().desk?.kept === "failed") throw new NotKept();
    },
  };
};

/** @typedef {ReturnType<typeof makeEdits>} Edits */
