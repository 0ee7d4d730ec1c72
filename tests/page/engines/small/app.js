/** The smallest page that is kept and updated by the same scripts as the app. */

import { scriptAddress } from "./trust.js";
import { makeUpdates } from "./updates.js";

const state = {
  offline: "unknown", waits: false, unsaved: false, tries: 0, typing: false, looked: false,
};

const updates = makeUpdates({
  onOffline: (offline) => (state.offline = offline),
  onWaiting: (waits) => (state.waits = waits),
  save: async () => {
    state.tries += 1;
    if (state.unsaved) throw new Error("something is not saved");
  },
  whenIdle: () =>
    new Promise((resolve) => {
      const clock = setInterval(() => {
        if (state.typing) return;
        clearInterval(clock);
        resolve();
      }, 20);
    }),
});

const askWorker = () =>
  new Promise((resolve, reject) => {
    const worker = new Worker(scriptAddress("./worker.js"), { type: "module" });
    worker.onmessage = ({ data }) => resolve(data);
    worker.onerror = () => reject(new Error("no worker"));
  });

globalThis.app = {
  state,
  updates,
  version: "__APP__",
  /** The version of every kind of file the page can get hold of. */
  versions: async () => [
    "__APP__",
    await askWorker(),
    await (await fetch("./part.txt")).text(),
    await (await fetch("./part.json")).json(),
  ],
};

// The app registers once its engine is ready; a test says when that is.
if (location.hash !== "#late") await updates.register();
state.looked = true;
