/**
 * Starts the engine as early as a page can: this file is loaded before the rest of the app, so
 * Python is on its way while the saved job is painted.
 */

import { openDoor } from "./door.js";
import { deviceManner, withToday } from "./manner.js";
import { BUILD } from "./py/build.js";
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

// A page that is left while its engine wakes looks to the next one like a page that crashed.
// Told synchronously, because nothing else is sure to be done before the page is gone.
const LEFT = "rungline left while starting";
let starting = true;

/**
 * Some browsers allow no storage at all; then there is no copy to wake either.
 * @template Result
 * @param {() => Result} act
 */
const attempt = (act) => {
  try {
    return act();
  } catch {
    return null;
  }
};

/** Take the word away; say whether it was there. */
const takeWord = () => {
  const word = attempt(() => localStorage.getItem(LEFT));
  attempt(() => localStorage.removeItem(LEFT));
  return word !== null;
};
const wasLeft = takeWord();
addEventListener("pageshow", takeWord);
addEventListener("pagehide", () => starting && attempt(() => localStorage.setItem(LEFT, "")));

/** @param {boolean} again whether an engine had to be ended before this one */
const startWorker = (again) => {
  const name = again ? "again" : wasLeft ? "left" : "";
  const worker = new Worker(scriptAddress("./worker.js"), { type: "module", name });
  return /** @type {import("./door.js").Engine} */ (/** @type {unknown} */ (worker));
};

/**
 * An engine that was started again may be of a newer version than the page, which was loaded
 * before. What was done is kept before it is done, so the page is simply loaded anew.
 * @param {Message} message
 */
const isAnother = ({ ready, build }) => ready && !starting && build !== BUILD;

/** @param {Message} message */
const tell = (message) => {
  if (isAnother(message)) location.reload();
  if (message.ready || message.failed) starting = false;
  if (listener) listener(message);
  else missed.push(message);
};

export const door = openDoor({
  start: startWorker,
  onStage: tell,
  manner: () => withToday(chosen.manner),
  isKept: () => Boolean(navigator.serviceWorker?.controller),
});
