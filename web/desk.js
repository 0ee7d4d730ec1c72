/** The open job: taken from the keeper, painted at once, then looked over by the engine. */

import { NoAnswer, Overtaken, Refused } from "./door.js";
import { NOT_SUPPOSED } from "./line_first.js";

/** @typedef {import("./state").Desk} Desk */
/** @typedef {import("./state").JobRecord} JobRecord */

/** What is open lies on this device no more. */
export const REMOVED = Object.freeze({ desk: null, missing: true, bench: null });

/** @param {import("./shapes").House & {edits: import("./edits.js").Edits}} house */
export const makeDesk = ({ store, door, keeper, tabs, edits }) => {
  /** What an answer depends on beside the job: the manner, and which core gave it. */
  const mannerMark = () => {
    const { manner, engine } = store.read();
    return JSON.stringify([manner, engine.version]);
  };

  /** Ask for the findings again when the manner or the core is not what they were made with. */
  const refresh = async () => {
    const { desk, engine } = store.read();
    if (!desk || engine.stage !== "ready" || desk.manner === mannerMark()) return;
    const mark = mannerMark();
    try {
      const seen = await door.ask("findings", { job: desk.job }, "findings");
      const now = store.read().desk;
      if (now?.id !== desk.id || now.job.rev !== desk.job.rev) return;
      store.change({ desk: { ...now, seen, manner: mark } });
    } catch (error) {
      if (![NoAnswer, Overtaken, Refused].some((kind) => error instanceof kind)) throw error;
    }
  };

  /** @param {JobRecord} record */
  const put = (record) => {
    const { line } = store.read();
    store.change({
      line: { ...line, what_if: { ...line.what_if, ...NOT_SUPPOSED } },
      desk: { ...record, kept: record.waiting.length ? "keeping" : "kept", pen: "asking" },
      missing: false,
      bench: null,
      preview: null,
    });
    tabs.take(record.id);
    refresh();
  };

  /** Counts what was asked for: a slower job must not be put over a later one. */
  let asked = 0;
  /** Counts who was given the pen: what was read for an earlier answer must not undo a later one. */
  let answers = 0;

  return {
    refresh,

    /** @param {string} id @param {() => void} [arrive] what is to be painted with it, not before */
    async open(id, arrive = () => {}) {
      asked += 1;
      const mine = asked;
      if (store.read().desk?.id === id) return store.change({ missing: false });
      const record = await keeper.readJob(id);
      if (mine !== asked) return;
      arrive();
      if (record) put(record);
      else store.change({ missing: true });
    },

    /** Take in what another tab has done to this job. @param {string} id */
    async follow(id) {
      store.change({ jobs: await keeper.listJobs() });
      if (store.read().desk?.id !== id) return;
      const record = await keeper.readJob(id);
      const now = store.read().desk;
      if (now?.id !== id) return;
      if (!record) return store.change(REMOVED);
      if (now.pen === "mine") return;
      store.change({ desk: { ...now, ...record, kept: "kept" } });
      await edits.freeLost();
    },

    /** This tab may write: take in what lies there, then do what waits. @param {string} id */
    async granted(id) {
      const mine = ++answers;
      const record = await keeper.readJob(id);
      const { desk } = store.read();
      if (desk?.id !== id || mine !== answers) return;
      const there = (record?.waiting ?? []).map((act) => ({ ...act, kept: true }));
      const waiting = [...there, ...desk.waiting];
      const once = [...new Map(waiting.map((act) => [act.key, act])).values()];
      store.change({ desk: { ...desk, ...record, waiting: once, pen: "mine" } });
      edits.mayWrite();
      edits.run();
    },

    /** Another tab writes: what it did meanwhile is what there is. @param {string} id */
    async denied(id) {
      const { desk } = store.read();
      if (desk?.id !== id) return;
      answers += 1;
      store.change({ desk: { ...desk, pen: "theirs" } });
      await this.follow(id);
    },

    /** Whether the pen may go to another tab now. @param {string} id */
    wanted(id) {
      const { desk } = store.read();
      return desk?.id === id && !desk.waiting.length && desk.kept === "kept";
    },
  };
};

/** @typedef {ReturnType<typeof makeDesk>} DeskKeeper */
