/** Small drawings of what hangs on a line, and of what a touch does. */

import { html, svg } from "../markup.js";

const DRAWN = {
  loudspeaker: svg`<path class="fill" d="M3 9h4.5L14 4v16l-6.5-5H3z" /><path d="M17 8.5a5 5 0 0 1 0 7M19.6 6a8.5 8.5 0 0 1 0 12" />`,
  loudspeaker_off: svg`<path d="M3 9h4.5L14 4v16l-6.5-5H3z" /><path d="M17 9.5l5 5M22 9.5l-5 5" />`,
  attenuator: svg`<circle cx="12" cy="12" r="8.5" /><path class="thick" d="M12 12 16.8 6.4" /><path d="M5 20.5 6 19M19 20.5 18 19" />`,
  existing: svg`<rect x="3.5" y="5.5" width="17" height="13" rx="2" stroke-dasharray="3 2.4" /><path d="M8 12h.1M12 12h.1M16 12h.1" class="thick" />`,
  junction: svg`<circle class="fill" cx="12" cy="12" r="3.4" /><path d="M12 2v6.5M12 15.5V22M15.5 12H22" />`,
  undo: svg`<path d="M8.5 5 4 9.5 8.5 14M4.5 9.5H14a5.5 5.5 0 0 1 0 11h-3" />`,
  redo: svg`<path d="M15.5 5 20 9.5 15.5 14M19.5 9.5H10a5.5 5.5 0 0 0 0 11h3" />`,
  add: svg`<path d="M12 4.5v15M4.5 12h15" />`,
  less: svg`<path d="M4.5 12h15" />`,
  close: svg`<path d="M6 6l12 12M18 6 6 18" />`,
  erase: svg`<path d="M8.5 5.5H21v13H8.5L3 12zM12 9.5l5 5M17 9.5l-5 5" />`,
  up: svg`<path d="M12 19.5v-15M5.5 11 12 4.5 18.5 11" />`,
  down: svg`<path d="M12 4.5v15M5.5 13l6.5 6.5L18.5 13" />`,
  back: svg`<path d="M14.5 4.5 7 12l7.5 7.5" />`,
  on: svg`<path d="M9.5 4.5 17 12l-7.5 7.5" />`,
  more: svg`<path class="thick" d="M5 12h.1M12 12h.1M19 12h.1" />`,
  change: svg`<path d="M4 20l1-4.5L16 4.5l3.5 3.5L8.5 19z" />`,
  remove: svg`<path d="M5 7h14M10 7V4.5h4V7M7 7l1 13h8l1-13" />`,
  move: svg`<path d="M7 4v13M3.5 13.5 7 17l3.5-3.5M17 20V7M13.5 10.5 17 7l3.5 3.5" />`,
  tally: svg`<path d="M6 4.5v15M10 4.5v15M14 4.5v15M18 4.5v15M3.5 17.5l17-11" />`,
  jobs: svg`<path d="M4 6.5h16M4 12h16M4 17.5h10" />`,
  job: svg`<path d="M6 3.5v17M6 7h7M6 12h11M6 17h5" /><circle cx="15" cy="7" r="1.6" class="fill" /><circle cx="19" cy="12" r="1.6" class="fill" /><circle cx="13" cy="17" r="1.6" class="fill" />`,
  about: svg`<circle cx="12" cy="12" r="8.7" /><path d="M12 11v5.5M12 7.4v.2" />`,
  connect: svg`<path d="M2.5 12H8M16 12h5.5M8 8.5v7M16 8.5v7M8 10h3M8 14h3M13 10h3M13 14h3" />`,
  copy: svg`<path d="M8.5 8.5h11v11h-11zM4.5 15.5v-11h11" />`,
  file: svg`<path d="M12 3.5v11M7 10l5 5 5-5M4.5 20h15" />`,
  open_file: svg`<path d="M12 15.5v-11M7 9l5-5 5 5M4.5 20h15" />`,
  send: svg`<path d="M12 14.5V3.5M7.5 8 12 3.5 16.5 8M7 11H4.5v9.5h15V11H17" />`,
  paste: svg`<path d="M8 5H5v15.5h14V5h-3M9 3.5h6v4H9zM8.5 12h7M8.5 16h5" />`,
  history: svg`<path d="M4.5 12a7.5 7.5 0 1 0 2.6-5.7L4.5 8.5M4.5 4v4.5H9M12 7.5V12l3 2.2" />`,
  compare: svg`<path d="M4 4.5h6.5v15H4zM13.5 4.5H20v15h-6.5zM6 9h2.5M15.5 9H18M6 13h2.5M15.5 15H18" />`,
  take: svg`<path d="M4.5 12.5 9.5 17.5 19.5 6.5" />`,
  ticked: svg`<path class="thick" d="M4.5 13 10 18.5 19.5 6" />`,
  swap: svg`<path d="M4 8.5h14M14 4.5l4 4-4 4M20 15.5H6M10 11.5l-4 4 4 4" />`,
  wrong: svg`<path d="M12 3.5 21.5 20h-19zM12 9.5v5M12 17.2v.2" />`,
  paper: svg`<path d="M5.5 3.5h13v17h-13zM8.5 8h7M8.5 12h7M8.5 16h4" />`,
  length: svg`<path d="M3.5 6v12M20.5 6v12M4 12h16M7.5 8.5 4 12l3.5 3.5M16.5 8.5 20 12l-3.5 3.5" />`,
  limits: svg`<path d="M4.5 7h15M4.5 17h15" /><circle cx="9" cy="7" r="2.3" class="fill" /><circle cx="15" cy="17" r="2.3" class="fill" />`,
};

/** @typedef {keyof typeof DRAWN} GlyphName */

/** @param {GlyphName} name */
export const glyph = (name) =>
  html`<svg class="glyph" viewBox="0 0 24 24" aria-hidden="true">${DRAWN[name]}</svg>`;
