/** Puts the house together: store, keeper, engine, tabs and actions, and what each tells the other. */

import { makeActions } from "./actions.js";
import { onAddress, readAddress, restoreAddress } from "./address.js";
import { makeDesk } from "./desk.js";
import { makeDrafts } from "./drafts.js";
import { makeEdits } from "./edits.js";
import { chosen, door, onStage } from "./engine.js";
import { makeExplaining } from "./explaining.js";
import { firstState } from "./first.js";
import { formIn } from "./forms/behind.js";
import { keeper } from "./keeper.js";
import { makeLadder } from "./ladder.js";
import { makeLineWatch } from "./line_watch.js";
import { makeMeterWatch } from "./meter_watch.js";
import { makeOpening } from "./opening.js";
import { numerals, say } from "./say.js";
import { makeStore } from "./store.js";
import { makeSupposing } from "./supposing.js";
import { makeTabs } from "./tabs.js";
import { makeTravel } from "./travel/travel.js";
import { watchAddress } from "./travel/doors.js";
import { takeShared } from "./travel/shared.js";
import { makeUpdates } from "./updates.js";

/** @typedef {import("./shapes").FullHouse} FullHouse */
/** @typedef {import("./shapes").Touch} Touch */

/** @type {Touch} */
const NO_TOUCH = { data: {}, text: "", checked: false, files: null };

/** Whether nothing is under way that another version would cut short. @param {import("./state").State} state */
const isIdle = ({ bench, comparing, place }) =>
  !formIn(bench) && !(place.screen === "compare" && Object.keys(comparing?.taken ?? {}).length);

export const openHouse = () => {
  const shared = takeShared();
  const carried = watchAddress((text) => travel.link(text));
  restoreAddress();
  const store = makeStore(firstState(readAddress(location.hash), chosen.manner));
  numerals.decimal = chosen.manner.decimal;

  /** @param {unknown} error */
  const onError = (error) => {
    // Shown to whoever looks for the cause; the person reads the plain words.
    console.error(error);
    store.change({ notice: { words: say("notice.unexpected"), bad: true } });
  };

  const tabs = makeTabs({
    onGranted: (id) => desk.granted(id).catch(onError),
    onDenied: (id) => desk.denied(id).catch(onError),
    onChanged: (id) => desk.follow(id).catch(onError),
    onWanted: (id) => desk.wanted(id),
  });
  const drafts = makeDrafts({ store, keeper });
  const edits = makeEdits({ store, door, keeper, tabs, drafts });
  const desk = makeDesk({ store, door, keeper, tabs, edits });
  const updates = makeUpdates({
    onOffline: (offline) => store.change({ offline }),
    onWaiting: (update) => store.change({ update }),
    save: async () => {
      await edits.settle();
      await drafts.settle();
      await keeper.keep("tally", store.read().tally);
    },
    whenIdle: () =>
      new Promise((resolve) => {
        const look = () => isIdle(store.read()) && resolve(undefined);
        store.listen(look);
        look();
      }),
  });
  const opening = makeOpening({ store, door, keeper, edits, desk, updates });
  const travel = makeTravel({ store, door, keeper, tabs }, onError);
  const { setManner } = opening;
  const house = { store, door, keeper, tabs, drafts, edits, desk, updates, setManner, ...travel.parts };
  const act = makeActions(house, onError);

  const lookAhead = makeLadder({ store, door, keeper, tabs });
  store.listen((state) => lookAhead(state).catch(onError));
  const watchLine = makeLineWatch({ store, door, keeper, tabs });
  store.listen((state) => watchLine(state).catch(onError));
  const explain = makeExplaining({ store, door, keeper, tabs });
  store.listen((state) => explain(state).catch(onError));
  const supposing = makeSupposing({ store, door, keeper, tabs });
  store.listen((state) => supposing(state).catch(onError));
  const watchMeter = makeMeterWatch({ store, door, keeper, tabs });
  store.listen((state) => watchMeter(state).catch(onError));
  store.listen((state) => drafts.follow(state).catch(onError));
  onStage((message) => opening.onStage(message, act).catch(onError));
  onAddress((place, led) => opening.goTo(place, act, led).catch(onError));
  store.listen(() => tabs.giveIfWanted());
  opening.remember().catch(onError);
  drafts.remember().catch(onError);
  travel.begin(carried, shared);
  return { store, act: (/** @type {string} */ name, touch = NO_TOUCH) => act(name, touch) };
};
