/** Every named event and what it does, in one table. */

import { compareActions } from "./actions/compare.js";
import { cablingActions } from "./actions/cabling.js";
import { formActions } from "./actions/forms.js";
import { historyActions } from "./actions/history.js";
import { houseActions } from "./actions/house.js";
import { jobsActions } from "./actions/jobs.js";
import { ladderActions } from "./actions/ladder.js";
import { lineActions } from "./actions/line.js";
import { meterActions } from "./actions/meter.js";
import { farActions } from "./actions/far.js";
import { openActions } from "./actions/open.js";
import { shareActions } from "./actions/share.js";
import { tallyActions } from "./actions/tally.js";
import { testActions } from "./actions/test.js";
import { wrongActions } from "./actions/wrong.js";

/** @typedef {import("./shapes").FullHouse} FullHouse */
/** @typedef {import("./shapes").Touch} Touch */

/**
 * What needs the core and leads to another screen, by the words of its button: it is shown as
 * waiting while the engine starts, and asked for once however often it is touched.
 */
const WISHES = /** @type {const} */ ({
  "tally.keep": "tally.keep",
  "jobs.new": "jobs.new",
  "open.demo": "jobs.demo",
});

/**
 * @param {FullHouse} house @param {string} name @param {() => unknown} act
 */
const waitingSeen = async ({ store }, name, act) => {
  const words = WISHES[/** @type {keyof typeof WISHES} */ (name)];
  const { wishes } = store.read();
  if (!words) return act();
  if (wishes.includes(words)) return;
  store.change({ wishes: [...wishes, words] });
  try {
    await act();
  } finally {
    store.change({ wishes: store.read().wishes.filter((each) => each !== words) });
  }
};

/** @param {FullHouse} house @param {(error: unknown) => void} onError */
export const makeActions = (house, onError) => {
  /** @type {import("./shapes").Actions} */
  const table = {
    ...tallyActions(house),
    ...jobsActions(house),
    ...formActions(house),
    ...lineActions(house),
    ...ladderActions(house),
    ...cablingActions(house),
    ...houseActions(house),
    ...meterActions(house),
    ...farActions(house),
    ...testActions(house),
    ...wrongActions(house),
    ...shareActions(house),
    ...openActions(house),
    ...compareActions(house),
    ...historyActions(house),
  };

  /** @param {string} name @param {Touch} touch */
  return async (name, touch) => {
    const action = table[name];
    if (!action) throw new Error(`no such event: ${name}`);
    try {
      await waitingSeen(house, name, () => action(touch));
    } catch (error) {
      onError(error);
    }
  };
};
