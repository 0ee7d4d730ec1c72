/**
 * The service worker, seen from the page. It is asked for after the first answer, so the first
 * visit does not compete with it. "Ready without signal" is true only when the cache is sealed
 * and whole. A new version waits until it is asked for; then every tab keeps what was done and
 * follows.
 */

import { scriptAddress } from "./trust.js";

/** @typedef {import("./state").State["offline"]} Offline */

const LOOK_AGAIN_AFTER_MILLISECONDS = 30 * 60 * 1000;
const ANSWER_WITHIN_MILLISECONDS = 60_000;
const CHANGE_WITHIN_MILLISECONDS = 5000;
const KEEP_AGAIN_AFTER_MILLISECONDS = 500;

/**
 * Ask a service worker whether everything is kept. One that is gone does not answer.
 * @param {ServiceWorker} worker @returns {Promise<boolean>}
 */
const isSealed = (worker) =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data === true);
    setTimeout(resolve, ANSWER_WITHIN_MILLISECONDS, false);
    worker.postMessage("SEALED", [port2]);
  });

/**
 * @param {{onOffline: (offline: Offline) => void, onWaiting: (waits: boolean) => void,
 *   save: () => Promise<void>, whenIdle: () => Promise<void>}} hear
 *   `save` fails while something is not kept; `whenIdle` waits while something is being typed
 */
export const makeUpdates = ({ onOffline, onWaiting, save, whenIdle }) => {
  /** @type {ServiceWorkerRegistration | null} */
  let registered = null;
  let asked = false;
  let looked = 0;
  const container = navigator.serviceWorker;
  let controlled = Boolean(container?.controller);

  const tellOffline = async () => {
    const worker = registered?.active ?? container.controller;
    if (!worker) return registered?.installing ? onOffline("getting") : onOffline("none");
    onOffline((await isSealed(worker)) ? "ready" : "none");
  };

  const tellWaiting = () => onWaiting(Boolean(registered?.waiting && container.controller));

  /** @param {ServiceWorker | null} worker */
  const watch = (worker) =>
    worker?.addEventListener("statechange", () => {
      tellWaiting();
      if (["activated", "redundant"].includes(worker.state)) tellOffline();
    });

  /** @param {ServiceWorkerRegistration} now */
  const adopt = (now) => {
    if (now === registered) return;
    registered = now;
    // A page that was loaded past its worker follows the next one all the same.
    controlled ||= Boolean(now.active);
    now.addEventListener("updatefound", () => watch(now.installing));
    watch(now.installing);
  };

  /** What is kept, and what waits, is told before the network is asked: a weak signal may never answer. */
  const tellKept = async () => {
    const now = await container.getRegistration();
    if (!now?.active) return onOffline("getting");
    adopt(now);
    onOffline("unknown");
    tellWaiting();
    if (await isSealed(now.active)) onOffline("ready");
  };

  const meet = async () => {
    const options = /** @type {const} */ ({ updateViaCache: "none" });
    const now = await container.register(scriptAddress("./sw.js"), options);
    looked = Date.now();
    adopt(now);
    return now.active ? now.update() : now;
  };

  /** Look for a new version, and for what the device has thrown away meanwhile. */
  const look = async () => {
    // Without signal there is nothing to find, and that is no fault.
    await Promise.allSettled([tellKept(), meet()]);
    tellWaiting();
    await tellOffline();
  };

  const lookAgain = () => {
    const soon = Date.now() - looked < LOOK_AGAIN_AFTER_MILLISECONDS;
    if (!document.hidden && !(soon && registered?.active)) look();
  };

  const isSaved = () =>
    save().then(
      () => true,
      () => false,
    );
  const pause = () => new Promise((next) => setTimeout(next, KEEP_AGAIN_AFTER_MILLISECONDS));

  const follow = async () => {
    // The first worker takes the page over as it is; every later one brings another version.
    if (!controlled) {
      controlled = true;
      return;
    }
    if (!asked) await whenIdle();
    // What is not kept would go with this page, so it stays until it is.
    while (!(await isSaved())) await pause();
    location.reload();
  };

  // At once: another tab may change the version while the engine of this one is still starting.
  container?.addEventListener("controllerchange", follow);

  let listens = false;
  const listen = () => {
    if (listens) return;
    listens = true;
    addEventListener("online", lookAgain);
    document.addEventListener("visibilitychange", lookAgain);
  };

  return {
    async register() {
      if (listens || !container) return;
      listen();
      await look();
    },

    /** Look by hand whether everything is kept, and for a new version. */
    async check() {
      if (!container) return onOffline("none");
      listen();
      await look();
    },

    /** Change to the version that waits, after everything is kept; fails when it is not. */
    async accept() {
      await save();
      asked = true;
      registered?.waiting?.postMessage("SKIP_WAITING");
      // A worker that is gone meanwhile changes nothing; what is there now is shown anew.
      setTimeout(follow, CHANGE_WITHIN_MILLISECONDS);
    },
  };
};

/** @typedef {ReturnType<typeof makeUpdates>} Updates */
