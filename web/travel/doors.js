/** Every way something comes in by itself: the address, another program, a file dragged on. */

import { isLink, recallLink, takeFromAddress } from "./fragment.js";

/** @typedef {{targetURL?: string, files?: readonly {getFile: () => Promise<File>}[]}} Launch */
/** @typedef {{setConsumer: (consumer: (launch: Launch) => void) => void}} LaunchQueue */
/** @typedef {{link: (text: string) => void, files: (files: File[]) => void,
 *   dragging: (over: boolean) => void}} Hear */

/** @param {DragEvent} event */
const hasFiles = ({ dataTransfer }) => Boolean(dataTransfer?.types.includes("Files"));

/** @param {Hear} hear */
const listenForDrags = ({ files, dragging }) => {
  addEventListener("dragover", (event) => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    dragging(true);
  });
  addEventListener("dragleave", ({ relatedTarget }) => relatedTarget ?? dragging(false));
  addEventListener("drop", (event) => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    dragging(false);
    const dropped = [...(event.dataTransfer?.files ?? [])];
    if (dropped.length) files(dropped);
  });
};

/** An installed app that is open already is told what it was opened with. @param {Hear} hear */
const listenForLaunches = ({ files, link }) => {
  const { launchQueue } = /** @type {{launchQueue?: LaunchQueue}} */ (
    /** @type {unknown} */ (globalThis)
  );
  launchQueue?.setConsumer(async ({ targetURL, files: handles = [] }) => {
    const opened = await Promise.all(handles.map((handle) => handle.getFile()));
    if (opened.length) return files(opened);
    const { hash = "", pathname = "" } = targetURL ? new URL(targetURL) : {};
    if (isLink(hash)) link(hash);
    // A shortcut leads to a screen of an app that is open.
    else if (hash.startsWith("#/") && pathname === location.pathname) location.hash = hash;
  });
};

/**
 * Before anything else looks at the address: take a link out of it, now and whenever it changes.
 * @param {(text: string) => void} link
 */
export const watchAddress = (link) => {
  addEventListener("hashchange", () => {
    const text = takeFromAddress();
    if (text) link(text);
  });
  return takeFromAddress() ?? recallLink();
};

/** @param {Hear} hear */
export const openDoors = (hear) => {
  listenForDrags(hear);
  listenForLaunches(hear);
};
