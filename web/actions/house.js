/** What touches on the house itself do: workings, units, the engine, updates, the other tab. */

import { say } from "../say.js";

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const houseActions = ({ store, door, tabs, edits, updates, setManner }) => {
  return {
    "working.open": ({ data: { finding = "", would = "{}" } }) => {
      const { bench } = store.read();
      const back = bench?.is === "working" ? bench.back : bench;
      store.change({ bench: { is: "working", finding, would, of: null, answer: null, failed: null, back } });
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
