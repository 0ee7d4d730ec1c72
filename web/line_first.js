/** What is held about a line before anything is known, and what this device remembers of it. */

/** @typedef {import("./line_state").LineState} LineState */

/** A row of a drawing is at least as tall as the smallest thing one can touch. */
export const LEAST_ROW = 48;

/** @type {LineState} */
export const firstLine = {
  state: "override",
  wide: false,
  row: LEAST_ROW,
  drawing: null,
  numbers: null,
  swaps: null,
  stock: null,
  cabling: null,
  what_if: {
    is: "voltage",
    line_v: "",
    cable: "",
    sections: "all",
    tap: "",
    run: "",
    answer: null,
    asked: null,
    key: null,
    about: "",
    problem: null,
  },
  turning: null,
  initials: "",
};

/** Nothing is supposed of a line yet, whatever was before. */
export const NOT_SUPPOSED = /** @type {const} */ ({
  answer: null,
  asked: null,
  key: null,
  line_v: "",
  tap: "",
  cable: "",
  sections: "all",
  run: "",
});

/** What of it is kept on this device. @param {LineState} line */
export const keptOf = ({ stock, turning, initials }) => ({ stock, turning, initials });
