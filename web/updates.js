/**
 * The service worker, seen from the page. It is asked for after the first answer, so the first
 * visit does not compete with it. "Ready without signal" is true only when the cache is sealed.
 */

import { scriptAddress } from "./trust.js";

/** @typedef {import("./state").State["offline"]} Offline */

const LOOK_AGAIN_AFTER_MILLISECONDS = 30 * 60 * 1000;

/** @param {ServiceWorker} worker @returns {Promise<boolean>} */
const isSealed = (worker) =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data === true);
    worker.postMessage("SEALED", [port2]);
  });

/**
 * @param {{onOffline: (offline: Offline) => void, onWaiting: (waits: boolean) => void,
 *   save: () => Promise<void>}} hear
 */
export const makeUpdates = ({ onOffline, onWaiting, save }) => {
  /** @type {ServiceWorkerRegistration | null} */
  let registered = null;
  let asked = false;
  let looked = 0;

  const tellOffline = async () => {
    const active = registered?.active;
    if (active) onOffline((await isSealed(active)) ? "ready" : "none");
  };

  const tellWaiting = () =>
    onWaiting(Boolean(registered?.waiting && navigator.serviceWorker.controller));

  /** @param {ServiceWorker | null} worker */
  const watch = (worker) =>
    worker?.addEventListener("statechange", () => {
      tellWaiting();
      if (worker.state === "activated") tellOffline();
      if (worker.state === "redundant" && !registered?.active) onOffline("none");
    });

  const lookAgain = () => {
    const now = Date.now();
    if (!registered || document.hidden || now - looked < LOOK_AGAIN_AFTER_MILLISECONDS) return;
    looked = now;
    // Without signal there is nothing to find, and that is no fault.
    registered.update().catch(() => {});
  };

  const reloadOnce = () => {
    if (asked) location.reload();
    asked = false;
  };

  return {
    async register() {
      if (registered || !("serviceWorker" in navigator)) return;
      onOffline("getting");
      navigator.serviceWorker.addEventListener("controllerchange", reloadOnce);
      try {
        registered = await navigator.serviceWorker.register(scriptAddress("./sw.js"), {
          updateViaCache: "none",
        });
      } catch {
        registered = null;
      }
      // Refused, or no signal: an app that is served from its cache is ready all the same.
      if (!registered) return onOffline(navigator.serviceWorker.controller ? "ready" : "none");
      registered.addEventListener("updatefound", () => watch(registered?.installing ?? null));
      watch(registered.installing);
      tellWaiting();
      tellOffline();
      looked = Date.now();
      addEventListener("online", lookAgain);
      document.addEventListener("visibilitychange", lookAgain);
    },

    /** Change to the version that waits, after everything is kept. */
    async accept() {
      await save();
      asked = true;
      registered?.waiting?.postMessage("SKIP_WAITING");
    },
  };
};

/** @typedef {ReturnType<typeof makeUpdates>} Updates */
