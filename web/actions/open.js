/** What touches on things from elsewhere do: paste, open, look, keep, replace, compare. */

import { goTo } from "../address.js";
import { NoAnswer, Refused } from "../door.js";
import { say } from "../say.js";
import { rememberLink } from "../travel/fragment.js";
import { penDecided } from "../travel/pen.js";

/** @typedef {import("../state").Came} Came */
/** @typedef {import("../state").Job} Job */
/** @typedef {import("../state").Seen} Seen */

const MOST_IN_FIELD = 20_000;

const makeKey = () => crypto.getRandomValues(new Uint32Array(2)).join("-");

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const openActions = ({ store, door, keeper, desk, edits, arriving, copies }) => {
  const picked = () => {
    const { arrived } = store.read();
    return arrived && arrived.picked !== null ? arrived.came[arrived.picked] : undefined;
  };

  const done = () => {
    rememberLink(null);
    arriving.forget();
  };

  /** @param {string} text */
  const look = (text) => {
    rememberLink(text);
    // A field with megabytes in it makes every touch slow, and nobody mends such a text by hand.
    if (text.length > MOST_IN_FIELD) store.change({ pasted: "" });
    goTo({ screen: "open" });
    return arriving.read(text);
  };

  /**
   * Keep a job from elsewhere. It remembers the state it came as: when it goes back, both sides
   * can find what they grew from.
   * @param {Came} came @param {Seen} seen
   */
  const keep = async ({ job, print, here }, seen) => {
    const base = { rev: job.rev, print };
    let mine = { ...job, base };
    if (here !== "new") {
      const { hand, first } = await keeper.takeNumbers(1);
      mine = { ...mine, id: `${hand}${first}`, name: say("open.copy_name", { name: job.name }) };
    }
    const record = { id: mine.id, job: mine, seen, manner: "", waiting: [], undo: [], redo: [] };
    await keeper.keepJob(record, { over: null, words: "do.take_in" });
    await copies.mark([mine]);
    return mine.id;
  };

  /** @param {Came} came */
  const seenOf = async ({ job, seen }) => seen ?? (await door.ask("findings", { job }));

  /** Open the job here that is to be changed; false when another tab has it. @param {string} id */
  const openMine = async (id) => {
    await desk.open(id);
    if (await penDecided(store, id)) return true;
    store.change({ notice: { words: say("open.busy"), bad: true } });
    return false;
  };

  return {
    "open.type": ({ text }) => store.change({ pasted: text }),

    "open.look": () => {
      const { pasted } = store.read();
      if (pasted.trim()) return look(pasted);
    },

    "open.from_clipboard": async () => {
      const text = await navigator.clipboard?.readText?.().catch(() => "");
      if (!text) return store.change({ notice: { words: say("open.paste_here"), bad: false } });
      store.change({ pasted: text });
      return look(text);
    },

    "open.file": async ({ files }) => {
      const chosen = [...(files ?? [])];
      if (!chosen.length) return;
      rememberLink(null);
      goTo({ screen: "open" });
      return arriving.readFiles(chosen);
    },

    "open.pick": ({ data: { at } }) => arriving.pick(Number(at)),

    "open.keep": async () => {
      const came = picked();
      if (!came) return;
      const id = await keep(came, await seenOf(came));
      store.change({ jobs: await keeper.listJobs() });
      done();
      goTo({ screen: "job", job: id });
    },

    "open.keep_all": async () => {
      const fresh = (store.read().arrived?.came ?? []).filter(({ here }) => here === "new");
      for (const came of fresh) await keep(came, await seenOf(came));
      const words = say("open.kept_all", { count: `${fresh.length}` });
      store.change({ jobs: await keeper.listJobs(), notice: { words, bad: false } });
      done();
      goTo({ screen: "jobs" });
    },

    "open.show_mine": () => {
      const id = picked()?.mine;
      if (!id) return;
      done();
      goTo({ screen: "job", job: id });
    },

    "open.replace": async () => {
      const came = picked();
      const changes = came?.comparison?.changes ?? [];
      if (!came?.mine || !(await openMine(came.mine))) return;
      const taken = Object.fromEntries(changes.map(({ id }) => [id, /** @type {const} */ ("theirs")]));
      const merge = { theirs: came.job, base: came.base, taken };
      await edits.send({ key: makeKey(), words: "do.merge", steps: [], merge });
      await copies.mark([came.job]);
      done();
      goTo({ screen: "job", job: came.mine });
      store.change({ notice: { words: say("open.replaced"), bad: false } });
    },

    "open.compare": async () => {
      const came = picked();
      const id = came?.mine;
      if (!came?.comparison || !id) return;
      await desk.open(id);
      const rev = store.read().desk?.job.rev ?? 0;
      const { job: theirs, base, comparison: answer } = came;
      store.change({
        comparing: { id, rev, theirs, base, past: false, answer, taken: {}, problem: null },
      });
      goTo({ screen: "compare", job: id });
    },

    "open.away": () => done(),

    "open.copy_link": async () => {
      const text = store.read().arrived?.text ?? "";
      const hash = text.startsWith("#") ? text : "";
      const address = hash ? `${new URL("./", location.href).href}${hash}` : text;
      const words = await navigator.clipboard?.writeText(address).then(
        () => say("share.copied"),
        () => say("share.copy_by_hand"),
      );
      if (words) store.change({ notice: { words, bad: false } });
    },

    "open.demo": async () => {
      const response = await fetch("./demo.json").catch(() => null);
      if (!response?.ok) return store.change({ notice: { words: say("jobs.no_demo"), bad: true } });
      try {
        const { job, ...seen } = await door.ask("open_saved", { text: await response.text() });
        if (!(await keeper.readJob(job.id))) {
          const { prints } = await door.ask("prints", { jobs: [job] });
          const [print = ""] = prints;
          const plain = { made_by: null, mine: null, comparison: null, base: null };
          await keep({ job, seen, print, here: "new", ...plain }, seen);
          store.change({ jobs: await keeper.listJobs(), bench: null });
        }
        goTo({ screen: "job", job: job.id });
      } catch (error) {
        if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
        const words = error instanceof Refused ? error.problem.words : say("engine.no_answer");
        store.change({ notice: { words, bad: true } });
      }
    },
  };
};
