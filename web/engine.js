/**
 * Starts the engine as early as a page can: this file is loaded before the rest of the app, so
 * Python is on its way while the saved job is painted.
 */

import { openDoor } from "./door.js";
import { deviceManner, withToday } from "./manner.js";
import { scriptAddress } from "./trust.js";

/** @typedef {import("./door.js").Message} Message */

/** How the person wants numbers; the app replaces it by what this device remembers. */
export const chosen = { manner: deviceManner() };

/** @type {Message[]} */
const missed = [];
/** @type {((message: Message) => void) | null} */
let listener = null;

/**
 * Hear of the engine's stages, those before now included.
 * @param {(message: Message) => void} listen
 */
export const onStage = (listen) => {
  listener = listen;
  for (const message of missed.splice(0)) listen(message);
};

const startWorker = () =>
  /** @type {import("./door.js").Engine} */ (
    /** @type {unknown} */ (new Worker(scriptAddress("./worker.js"), { type: "module" }))
  );

export const door = openDoor({
  start: startWorker,
  onStage: (message) => (listener ? listener(message) : missed.push(message)),
  manner: () => withToday(chosen.manner),
});
