/** What is held about a line before anything is known, and what this device remembers of it. */

/** @typedef {import("./line_state").LineState} LineState */

/** @type {LineState} */
export const firstLine = {
  state: "override",
  wide: false,
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
    of: "",
    answer: null,
    asked: null,
    job: null,
    rev: null,
    problem: null,
  },
  turning: null,
  initials: "",
};

/** What of it is kept on this device. @param {LineState} line */
export const keptOf = ({ stock, turning, initials }) => ({ stock, turning, initials });
