/** Fields that every point has: where it hangs, the section of cable that leads to it, its label. */

import { say } from "../say.js";
import { childrenOf } from "../tree.js";
import { hangChoices, jobOf, kindField, nowText } from "./lists.js";
import { choiceField, numberField, wordsField } from "./shape.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Point} Point */
/** @typedef {import("../state").Zone} Zone */
/** @typedef {import("../state").Field} Field */

/** @param {State} state @param {string} id @returns {Zone | undefined} */
export const zoneOf = (state, id) => jobOf(state).zones.find((each) => each.id === id);

/** @param {State} state @param {string} id @returns {Point | undefined} */
export const pointOf = (state, id) =>
  jobOf(state)
    .zones.flatMap(({ line }) => line)
    .find((each) => each.id === id);

/** The voltage a zone's line is driven with, as text. @param {State} state @param {Zone} zone */
export const voltsOf = (state, { output }) => (output ? nowText(state, output, "line_v") : "");

/**
 * The end of the run: where the next one hangs unless the person says otherwise.
 * @param {Zone} zone
 */
export const farEnd = ({ line }) => {
  const children = childrenOf(line);
  return line.findLast(({ id }) => !children.has(id))?.id ?? "";
};

/** @param {State} state @param {Zone} zone @param {string} after @returns {Field[]} */
export const hangFields = (state, zone, after) => [
  choiceField("after", "", say("field.after"), `${zone.id}/${after}`, hangChoices(state, [zone.id])),
  {
    ...choiceField("splice", "", say("field.splice"), "run", [
      { value: "run", words: say("choice.splice_run") },
      { value: "branch", words: say("choice.splice_branch") },
    ]),
    hint: say("field.splice_hint"),
  },
];

/** @param {State} state @param {string} at @param {Point | null} point @param {string} [cable] */
export const sectionFields = (state, at, point, cable = "") => {
  const now = (/** @type {string} */ field) => (point ? nowText(state, point.id, field) : "");
  return [
    numberField("length_m", `${at}.length_m`, say("field.length_m"), now("length_m"), {
      hint: say("field.length_m_hint"),
    }),
    kindField(state, "cables", {
      name: "cable",
      at: `${at}.cable`,
      words: say("field.cable"),
      value: point ? (point.cable ?? "") : cable,
    }),
    numberField("joint_ohm", `${at}.joint_ohm`, say("field.joint_ohm"), now("joint_ohm"), {
      hint: say("field.joint_ohm_hint"),
      rarely: true,
    }),
  ];
};

/** @param {string} at @param {Point | null} point */
export const labelField = (at, point) => ({
  ...wordsField("label", at, say("field.label"), point?.fitted.label ?? ""),
  hint: point ? undefined : say("field.label_hint"),
});
