/** Verdicts as shape, word and colour together: each can be told from the others without colour. */

import { html, svg } from "../markup.js";
import { sayOne } from "../say.js";

/** @typedef {import("../state").Verdict} Verdict */

const SHAPES = {
  ok: svg`<circle cx="12" cy="12" r="10" /><path class="cut" d="M7 12.5l3.4 3.5L17 8.6" />`,
  near: svg`<path d="M12 1.5 22.5 12 12 22.5 1.5 12z" /><path class="cut" d="M12 6.5v7M12 17v.2" />`,
  over: svg`<path d="M7.5 1.5h9l6 6v9l-6 6h-9l-6-6v-9z" /><path class="cut" d="M8 8l8 8M16 8l-8 8" />`,
  unknown: svg`<circle class="open" cx="12" cy="12" r="9.5" /><path class="ink" d="M9 9.4a3 3 0 1 1 4.4 2.7c-1 .5-1.4 1-1.4 2.1M12 17.4v.2" />`,
  note: svg`<circle class="rim" cx="12" cy="12" r="9.5" /><path class="ink" d="M12 11v6M12 7v.2" />`,
};

/** @param {Verdict} verdict */
export const shape = (verdict) =>
  html`<svg class="shape" viewBox="0 0 24 24" aria-hidden="true">${SHAPES[verdict]}</svg>`;

/**
 * The shape with its word.
 * @param {Verdict} verdict @param {string} [words] in place of the verdict's own word
 */
export const verdictMark = (verdict, words = sayOne("verdict", verdict)) =>
  html`<span class="verdict v-${verdict}">${shape(verdict)}<span>${words}</span></span>`;

/**
 * The shape alone, its word for those who cannot see it.
 * @param {Verdict} verdict @param {string} [words] in place of the verdict's own word
 */
export const verdictShape = (verdict, words = sayOne("verdict", verdict)) =>
  html`<span class="verdict v-${verdict}">${shape(verdict)}<span class="unseen">${words}</span></span>`;
