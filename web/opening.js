/** What happens when the page opens: what is kept is painted, then the engine is met and asked. */

import { chosen } from "./engine.js";
import { NOT_SUPPOSED } from "./line_first.js";
import { numerals, together } from "./say.js";
import { catalogueOf } from "./stock.js";

/** @typedef {import("./state").Place} Place */
/** @typedef {import("./state").Manner} Manner */
/** @typedef {import("./state").Catalogue} Catalogue */
/** @typedef {import("./door.js").Message} Message */
/** @typedef {(name: string, touch: import("./shapes").Touch) => Promise<void>} Act */

const NO_TOUCH = { data: {}, text: "", checked: false, files: null };

/**
 * The text of a line voltage in a new manner of printing.
 * @param {Catalogue} before @param {Catalogue} now @param {string} text
 */
const sameVolts = (before, now, text) => {
  const line_v = before.line_volts.find(({ shown }) => shown === text)?.line_v;
  return now.line_volts.find((each) => each.line_v === line_v)?.shown ?? text;
};

/** @param {Pick<import("./shapes").FullHouse,
 *   "store" | "door" | "keeper" | "edits" | "desk" | "updates">} house */
export const makeOpening = ({ store, door, keeper, edits, desk, updates }) => {
  /** What this device remembers, painted before the engine is ready. */
  const remembering = (async () => {
    const names = ["manner", "tally"];
    const [kept, tally] = await Promise.all(names.map((name) => keeper.read(name)));
    const now = store.read();
    const manner = kept ?? now.manner;
    chosen.manner = manner;
    numerals.decimal = manner.decimal;
    store.change({
      manner,
      catalogue: catalogueOf(manner),
      tally: { ...now.tally, ...tally, line_v: together(tally?.line_v ?? now.tally.line_v) },
      jobs: await keeper.listJobs(),
    });
  })();

  /** Ask for everything that depends on the core or on the manner. @param {Act} act */
  const askAgain = async (act) => {
    const { version } = await door.ask("version", {});
    store.change({ engine: { ...store.read().engine, version } });
    await desk.refresh();
    await act("tally.ask", NO_TOUCH);
  };

  /** @type {Act} */
  let acting = async () => {};
  /** Counts where the person went, so that what is read late opens no screen that was left. */
  let turns = 0;

  return {
    remember: () => remembering,

    /**
     * A note stays behind with its screen, unless it is about work that is not kept yet or the page
     * itself led on. A screen of another job opens with that job: until then what is on the screen is of
     * this one, and no touch on it may go to the wrong job.
     * @param {Place} place @param {Act} act @param {boolean} led
     */
    async goTo(place, act, led) {
      acting = act;
      turns += 1;
      const turn = turns;
      const arrive = () => turn === turns && show(place, led);
      const { desk: open } = store.read();
      const isAnother = place.job && open && open.id !== place.job;
      if (!isAnother) arrive();
      if (place.job) await desk.open(place.job, isAnother ? arrive : undefined);
      if (turn !== turns) return;
      if (place.screen === "limits") {
        await act("form.open", { ...NO_TOUCH, data: { form: "set_limits" } });
      }
      if (place.screen === "about") await readAbout();
    },

    /** @param {Message} message @param {Act} act */
    async onStage({ stage, bytes, failed, cause = "unknown", file = "", ready, way }, act) {
      acting = act;
      const { engine } = store.read();
      if (bytes) store.change({ engine: { ...engine, bytes } });
      if (failed) {
        store.change({ engine: { ...engine, stage: "failed", cause: { is: cause, file, says: failed } } });
      }
      if (stage) {
        const next = /** @type {import("./state").EngineState["stage"]} */ (stage);
        store.change({ engine: { ...engine, stage: next } });
      }
      const known = /** @type {import("./state").EngineState["way"]} */ (way ?? null);
      // Whether a copy was kept is told long after the engine was ready.
      if (known && !ready) store.change({ engine: { ...engine, way: known } });
      if (!ready) return;
      store.change({ engine: { ...engine, stage: "ready", way: known } });
      await remembering;
      await askAgain(act);
      await edits.run();
      await updates.register();
    },

    /** @param {Partial<Manner>} part */
    setManner(part) {
      const { manner, catalogue: before, tally, meter, line, bench } = store.read();
      chosen.manner = { ...manner, ...part };
      numerals.decimal = chosen.manner.decimal;
      const catalogue = catalogueOf(chosen.manner);
      const volts = (/** @type {string} */ text) => sameVolts(before, catalogue, text);
      const { about, far } = meter;
      store.change({
        manner: chosen.manner,
        catalogue,
        tally: { ...tally, line_v: volts(tally.line_v) },
        meter: {
          ...meter,
          about: { ...about, line_v: volts(about.line_v) },
          // A distance, what if and a working were told in the manner before: they are asked for anew.
          far: { ...far, answer: null },
        },
        line: { ...line, what_if: { ...line.what_if, ...NOT_SUPPOSED } },
        bench: bench?.is === "working" ? bench.back : bench,
      });
      keeper.keep("manner", chosen.manner);
      return askAgain(acting);
    },
  };

  /** @param {Place} place @param {boolean} led */
  function show(place, led) {
    const { going: id, notice, desk: open } = store.read();
    if (!led && notice && !notice.on && open?.kept !== "failed") store.change({ notice: null });
    store.change({ place, bench: id ? { is: "thing", id } : null, going: null, missing: false });
  }

  async function readAbout() {
    store.change({ kept_for_good: (await navigator.storage?.persisted?.()) ?? null });
    if (store.read().changes) return;
    const response = await fetch("./changes.json").catch(() => null);
    if (response?.ok) store.change({ changes: await response.json() });
  }
};
