/** What touches on the house itself do: workings, units, the engine, updates, the other tab. */

import { NoAnswer, Overtaken, Refused } from "../door.js";
import { say } from "../say.js";

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const houseActions = ({ store, door, tabs, edits, updates, setManner }) => {
  /** The job whose numbers are on the screen. */
  const jobShown = () => {
    const { place, tally, desk } = store.read();
    return place.screen === "tally" ? tally.answer?.job : desk?.job;
  };

  /** @param {string} finding @param {Partial<Extract<import("../state").Bench, {is: "working"}>>} part */
  const changeWorking = (finding, part) => {
    const { bench } = store.read();
    if (bench?.is === "working" && bench.finding === finding) {
      store.change({ bench: { ...bench, ...part } });
    }
  };

  return {
    "working.open": async ({ data: { finding = "", would = "{}" } }) => {
      const { bench } = store.read();
      const back = bench?.is === "working" ? bench.back : bench;
      store.change({ bench: { is: "working", finding, answer: null, failed: null, back } });
      try {
        const body = { job: jobShown(), finding, ...JSON.parse(would) };
        changeWorking(finding, { answer: await door.ask("working", body, "working") });
      } catch (error) {
        if (error instanceof Overtaken) return;
        const refused = error instanceof Refused;
        if (!refused && !(error instanceof NoAnswer)) throw error;
        changeWorking(finding, { failed: refused ? error.problem.words : say("engine.no_answer") });
      }
    },

    "findings.show": () => {
      document.getElementById("findings")?.scrollIntoView();
      document.getElementById("findings-title")?.focus({ preventScroll: true });
    },

    "notice.close": () => store.change({ notice: null }),

    "edit.keep_again": () => edits.keepAgain(),

    "engine.retry": () => {
      store.change({ engine: { ...store.read().engine, stage: "again", cause: null } });
      door.retry();
    },

    "update.accept": () =>
      updates.accept().catch(() => {
        store.change({ notice: { words: say("update.waits"), bad: true } });
      }),

    "offline.check": () => updates.check(),

    "tabs.want": () => {
      const { desk } = store.read();
      if (desk) tabs.want(desk.id);
    },

    "manner.length": ({ text }) => setManner({ length: text === "ft" ? "ft" : "m" }),

    "manner.decimal": ({ text }) => setManner({ decimal: text === "," ? "," : "." }),
  };
};
