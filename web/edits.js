/**
 * Changes to the open job, one after another. An act is kept before it is done, so nothing the
 * person did is lost when the engine is not ready, breaks, or the battery dies.
 */

import { leaveFormScreen } from "./address.js";
import { REMOVED } from "./desk.js";
import { NoAnswer, Overtaken, Refused } from "./door.js";
import { doneFor, formIn, inPlaceOfForm } from "./forms/behind.js";
import { Stale } from "./keeper.js";
import { makePerform, nextWays } from "./performing.js";
import { say } from "./say.js";

/** @typedef {import("./state").Act} Act */
/** @typedef {import("./state").Desk} Desk */
/** @typedef {import("./state").Job} Job */
/** @typedef {import("./state").JobRecord} JobRecord */
/** @typedef {import("./state").Seen} Seen */

/** The device did not take what the person did. */
export class NotKept extends Error {}

/** @param {Job} job */
const pastKey = (job) => `${job.id}.${job.rev}`;

/** What takes a thing away can be done once. @param {Act} act */
const takenAway = ({ steps }) =>
  steps.some(({ command }) => /^(remove|drop)_/.test(command.do)) ? JSON.stringify(steps) : null;

/** The same thing is being taken away already. @param {Desk} desk @param {Act} act */
const isGoing = ({ waiting }, act) => {
  const asked = takenAway(act);
  return asked !== null && waiting.some((each) => takenAway(each) === asked);
};

/**
 * What was done is said with the way back, unless more is to be done first: that would be put back.
 * @param {Act} act @param {Act[]} waiting
 */
const noticeOf = ({ told }, waiting) =>
  told && !waiting.length ? { notice: { words: told, bad: false, again: "edit.undo" } } : {};

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

/** @param {import("./shapes").House & {drafts: import("./drafts.js").Drafts}} house */
export const makeEdits = ({ store, door, keeper, tabs, drafts }) => {
  const perform = makePerform({ door, keeper });
  let running = false;
  let keeping = Promise.resolve();
  /** What the device did not take, to be tried again. @type {(() => Promise<void>) | null} */
  let notTaken = null;

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

  /** @param {Desk} before @param {Act} act @param {{job: Job, seen: Seen}} landed */
  const land = async (before, act, { job, seen }) => {
    const desk = deskOf(before.id);
    if (!desk) return;
    const key = pastKey(before.job);
    const { gone, ...ways } = nextWays(desk, act, key);
    const waiting = desk.waiting.filter((other) => other.key !== act.key);
    const next = { ...desk, job, seen, waiting, ...ways };
    store.change({ desk: { ...next, kept: "keeping" }, ...noticeOf(act, waiting) });
    const how = { over: before.job.rev, past: { key, job: before.job }, gone, words: act.words };
    const theirs = act.merge ? { theirs: act.merge.theirs } : {};
    const take = async () => {
      await keeper.keepJob(recordOf(deskOf(job.id) ?? next), { ...how, ...theirs });
      notTaken = null;
      changeDesk(job.id, { kept: "kept" });
      tabs.tell(job.id);
      store.change({ jobs: await keeper.listJobs() });
    };
    try {
      await take();
    } catch (error) {
      if (!(error instanceof Stale)) notTaken = take;
      throw error;
    }
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
      await showRefusal(act, error.problem);
      return drop(desk, act);
    }
    if (error instanceof Stale) {
      await freeForm(act, null);
      const record = await keeper.readJob(desk.id);
      if (!record) return deskOf(desk.id) ? store.change(REMOVED) : undefined;
      changeDesk(desk.id, { ...record, waiting: [], kept: "kept" });
      return store.change({ notice: { words: say("edit.stale"), bad: true } });
    }
    if (error instanceof NoAnswer) {
      await freeForm(act, null);
      store.change({ notice: { words: say("engine.no_answer"), bad: true } });
      return drop(desk, act);
    }
    showNotKept(desk.id);
  };

  /** @param {string} id */
  const showNotKept = (id) => {
    const again = { again: "edit.keep_again", again_words: say("edit.keep_again") };
    changeDesk(id, { kept: "failed" });
    store.change({ notice: { words: say("edit.not_kept"), bad: true, ...again } });
  };

  /** The open form that asked for an act. @param {Act} act */
  const formOf = (act) => {
    const form = formIn(store.read().bench);
    return form?.context.act === act.key ? form : null;
  };

  /**
   * An act was not done: its form may be put right and sent again, and is kept until then.
   * @param {Act} act @param {import("./state").Form["problem"]} problem
   */
  const freeForm = async (act, problem) => {
    const form = formOf(act);
    if (form) {
      const { act: _, ...context } = form.context;
      const free = { ...form, context, busy: false, problem };
      store.change({ bench: inPlaceOfForm(store.read().bench, { is: "form", form: free }) });
    }
    drafts.answered(act.key, false);
    await drafts.settle();
    return Boolean(form);
  };

  /** @param {Act} act @param {import("./state").Problem} problem */
  const showRefusal = async (act, { words, where, remedy }) => {
    if (await freeForm(act, { field: where.field ?? null, words, remedy })) return;
    const both = remedy ? say("edit.refused", { words, remedy }) : words;
    store.change({ notice: { words: both, bad: true } });
  };

  /** @param {Act} act @param {{job: Job, seen: Seen}} landed */
  const closeFormOf = (act, { job, seen }) => {
    drafts.answered(act.key, true);
    const state = store.read();
    const { bench, desk } = state;
    const form = formOf(act);
    if (!desk || !form) return;
    drafts.end(form);
    const done = { ...state, desk: { ...desk, job, seen } };
    store.change({ bench: inPlaceOfForm(bench, doneFor(form, act, done)) });
    leaveFormScreen(state.place);
  };

  /** @param {Desk} desk @param {Act} act */
  const doAct = async (desk, act) => {
    try {
      const landed = await perform(desk, act);
      if (!landed) return await drop(desk, act);
      closeFormOf(act, landed);
      await land(desk, act, landed);
    } catch (error) {
      // Nor may the device take that it was not done; what waits behind it is not to wait for ever.
      await fail(desk, act, error).catch(() => showNotKept(desk.id));
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

  /** Try once more to keep what the device did not take; then go on. */
  const keepAgain = async () => {
    const { desk } = store.read();
    if (!desk) return;
    store.change({ notice: null, desk: { ...desk, kept: "keeping" } });
    try {
      await (notTaken ?? (() => keeper.keepWaiting(desk.id, desk.waiting)))();
      changeDesk(desk.id, { kept: "kept" });
    } catch {
      return showNotKept(desk.id);
    }
    await run();
  };

  return {
    run,

    /** @param {Act} act */
    async send(act) {
      const { desk } = store.read();
      if (!desk) return freeForm(act, null);
      if (desk.pen === "theirs") {
        store.change({ notice: { words: say("tabs.reads_only"), bad: true } });
        return freeForm(act, null);
      }
      if (isGoing(desk, act)) return;
      const waiting = [...desk.waiting, act];
      store.change({ desk: { ...desk, waiting, kept: "keeping" }, notice: null });
      if (notTaken) return keepAgain();
      keeping = keeper.keepWaiting(desk.id, waiting);
      run();
      try {
        await keeping;
        markKept(desk.id, act.key);
      } catch {
        showNotKept(desk.id);
      }
    },

    keepAgain,

    /** This tab has the pen: what was said of reading only is true no more. */
    mayWrite() {
      if (store.read().notice?.words === say("tabs.reads_only")) store.change({ notice: null });
    },

    /** A form whose act waits no more, as another tab took the pen and did it or not, is alive again. */
    async freeLost() {
      const { bench, desk } = store.read();
      const act = formIn(bench)?.context.act;
      const waits = desk?.waiting.some(({ key }) => key === act);
      if (act && !waits) await freeForm({ key: act, words: "", steps: [] }, null);
    },

    /** Wait until every act is at least kept; fails when one could not be. */
    async settle() {
      await keeping;
      if (store.read().desk?.kept === "failed") throw new NotKept();
    },
  };
};

/** @typedef {ReturnType<typeof makeEdits>} Edits */
