/** How new points join a line: where they hang, and whether they are cut into its cable. */

import { say } from "../say.js";
import { childrenOf } from "../tree.js";
import { faceOf } from "./lists.js";
import { hangFields } from "./section_fields.js";
import { choiceField } from "./shape.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Zone} Zone */
/** @typedef {import("../state").Form} Form */
/** @typedef {import("../state").Field} Field */

/**
 * @param {State} state @param {Zone} zone
 * @param {{after?: string, ahead?: string}} place
 * @returns {Field[]}
 */
export const joinFields = (state, zone, { after = "", ahead }) => {
  const [where, splice] = hangFields(state, zone, after);
  const hanging = childrenOf(zone.line).get(after || null) ?? [];
  const cut = choiceField("cut_in", "", say("field.cut_in"), "cut", [
    { value: "cut", words: say("choice.cut_in") },
    { value: "new", words: say("choice.new_cable") },
  ]);
  const title = ahead ? (faceOf(state, ahead)?.title ?? "") : "";
  const joins = splice && {
    ...splice,
    ...(ahead ? { value: `ahead/${ahead}` } : {}),
    choices: [
      ...(ahead ? [{ value: `ahead/${ahead}`, words: say("choice.ahead", { title }) }] : []),
      ...(splice.choices ?? []),
    ],
  };
  const cuts = hanging.length === 1 || ahead ? [cut] : [];
  return [...(where ? [where] : []), ...(joins ? [joins] : []), ...cuts];
};

/** The fields of a command that say how its points join. @param {Form} form */
export const joinOf = ({ values }) => {
  const [way, ahead] = (values.splice ?? "run").split("/");
  return {
    splice: way === "run",
    ahead_of: ahead ?? null,
    cut_in: values.cut_in === "cut" && way !== "branch",
  };
};
