/**
 * How tall the rows of a drawing are: all alike, since the wire beside them is to scale, and as
 * tall as the one that says most, so that no word of it is cut off.
 */

import { LEAST_ROW } from "./line_first.js";

/** What is left free above and below the words of a row, in the units of the picture. */
const FREE = 8;

const lettersNow = () => Number.parseFloat(getComputedStyle(document.documentElement).fontSize);

/** How tall the tallest row has to be. @param {HTMLElement} root @param {number} letters */
const tallest = (root, letters) => {
  /** The most that is needed, in the units of the picture. @param {string} what */
  const most = (what) =>
    [...root.querySelectorAll(what)].reduce(
      (tall, each) => Math.max(tall, (each.getBoundingClientRect().height / letters) * 16),
      0,
    );
  // a figure has room around it of its own
  const needed = Math.max(most(".drawn-words") + FREE, most(".drawn-figure .figure"));
  return Math.max(LEAST_ROW, Math.ceil(needed));
};

/** @param {import("./store").Store} store @param {HTMLElement} root */
export const keepRowsWhole = (store, root) => {
  /** What was measured last: nothing is measured twice. @type {unknown[]} */
  let seen = [];
  const look = () => {
    const { line } = store.read();
    const all = root.querySelector(".drawn-all");
    if (!all) return;
    const letters = lettersNow();
    const now = [line.drawing, all.clientWidth, letters];
    if (now.every((each, at) => each === seen[at])) return;
    seen = now;
    const row = tallest(root, letters);
    if (row !== line.row) store.change({ line: { ...line, row } });
  };
  store.listen(look);
  const sheet = root.querySelector(".sheet");
  if (sheet) new ResizeObserver(look).observe(sheet);
};
