/** What can be chosen in forms: outputs, cables, kinds, line voltages, places on a line. */

import { hangingOrder } from "../tree.js";
import { kindFace, kindsOf } from "../kinds.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Job} Job */
/** @typedef {import("../state").Family} Family */
/** @typedef {import("../state").Choice} Choice */

/** @param {State} state @returns {Job} */
export const jobOf = ({ desk }) => {
  if (!desk) throw new Error("no job is open");
  return desk.job;
};

/** @param {State} state @param {string} id */
export const faceOf = ({ desk }, id) => desk?.seen.faces.things[id];

/**
 * The text of a number as it stands now, ready to be typed over.
 * @param {State} state @param {string} id @param {string} field
 */
export const nowText = (state, id, field) => faceOf(state, id)?.fields?.[field] ?? "";

/**
 * A name for a new thing that none of the others has: the first alone, then with a number.
 * @param {string} first @param {(number: string) => string} numbered @param {readonly {name: string}[]} others
 */
export const freeName = (first, numbered, others) => {
  const taken = new Set(others.map(({ name }) => name));
  const names = [first, ...others.map((_, at) => numbered(String(at + 2)))];
  return names.find((name) => !taken.has(name)) ?? first;
};

const notKnown = () => ({ value: "", words: say("choice.not_known") });

/** @param {State} state */
export const voltChoices = (state) => {
  const { catalogue, desk } = state;
  const listed = catalogue.line_volts;
  const used = (desk?.job.amplifiers ?? []).flatMap(({ outputs }) => outputs);
  const rest = used
    .filter(({ line_v }) => !listed.some((each) => each.line_v === line_v))
    .map(({ id, line_v }) => ({ line_v, shown: nowText(state, id, "line_v") }));
  const all = [...listed, ...rest];
  return {
    choices: all.map(({ line_v, shown }) => ({ value: String(line_v), words: shown })),
    stands_for: Object.fromEntries(all.map(({ line_v }) => [String(line_v), line_v])),
  };
};

/** @param {State} state @returns {Choice[]} */
export const outputChoices = (state) => {
  const { amplifiers } = jobOf(state);
  const outputs = amplifiers.flatMap((amplifier) =>
    amplifier.outputs.map(({ id, name: output }) => ({
      value: id,
      words: say("choice.output_is", { amplifier: amplifier.name, output, is: faceOf(state, id)?.line ?? "" }),
    })),
  );
  return [{ value: "", words: say("choice.no_output") }, ...outputs];
};

/**
 * A choice of kinds, with a key to make one of one's own.
 * @param {State} state @param {Family} family
 * @param {{name: string, at: string, words: string, value: string}} field
 * @returns {import("../state").Field}
 */
export const kindField = (state, family, field) => ({
  ...field,
  is: "choice",
  own: family,
  choices: [
    notKnown(),
    ...kindsOf(state, family).map(({ id, name }) => ({
      value: id,
      words: kindFace(state, family, id)?.title ?? name,
    })),
  ],
});

/**
 * The step that copies a kind into the job before it is used there, when it is not there yet.
 * @param {State} state @param {Family} family @param {string} id
 * @returns {import("../state").Step[]}
 */
export const useKind = (state, family, id) => {
  if (!id || jobOf(state).kinds[family].some((kind) => kind.id === id)) return [];
  const kind = kindsOf(state, family).find((each) => each.id === id);
  return kind ? [{ command: { do: "use_kind", family, kind } }] : [];
};

/**
 * Every place a point can hang on, as "zone/point" ("zone/" is the terminals).
 * @param {State} state @param {string[]} [zones] only these
 * @returns {Choice[]}
 */
export const hangChoices = (state, zones) =>
  jobOf(state)
    .zones.filter(({ id }) => !zones || zones.includes(id))
    .flatMap((zone) => [
      { value: `${zone.id}/`, words: say("choice.terminals", { zone: zone.name }) },
      ...hangingOrder(zone.line).map(({ point }) => ({
        value: `${zone.id}/${point.id}`,
        words: say("choice.behind", {
          zone: zone.name,
          point: faceOf(state, point.id)?.title ?? point.fitted.label ?? point.id,
        }),
      })),
    ]);

/** @param {string} text */
export const splitHang = (text) => {
  const [zone = "", after = ""] = text.split("/");
  return { zone, after: after || null };
};

/** @param {Array<[string, string]>} pairs @returns {Choice[]} */
export const choices = (pairs) => pairs.map(([value, words]) => ({ value, words }));

export const yesNo = () => ({
  choices: [
    notKnown(),
    { value: "yes", words: say("choice.yes") },
    { value: "no", words: say("choice.no") },
  ],
  stands_for: { "": null, yes: true, no: false },
});

/** @param {boolean | null | undefined} value */
export const yesNoText = (value) => (value === true ? "yes" : value === false ? "no" : "");
