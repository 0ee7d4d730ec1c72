/** Forms for amplifiers, their outputs, and the watts outputs share. */

import { say } from "../say.js";
import { choices, freeName, jobOf, nowText, voltChoices } from "./lists.js";
import { choiceField, fill, fillTouched, numberField, wordsField } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */
/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Output} Output */

const driveChoices = () =>
  choices([
    ["", say("choice.not_known")],
    ["isolated", say("choice.isolated")],
    ["direct", say("choice.direct")],
  ]);

/** A new output most likely drives the voltage of the others; of a first one nothing is known. @param {State} state */
const likelyVolts = (state) => {
  const last = jobOf(state).amplifiers.at(-1)?.outputs.at(-1);
  return last ? String(last.line_v) : "";
};

/**
 * @param {State} state @param {string} at @param {Output | null} output
 */
const outputFields = (state, at, output) => {
  const now = (/** @type {string} */ field) => (output ? nowText(state, output.id, field) : "");
  const volts = voltChoices(state);
  const line_v = output ? String(output.line_v) : likelyVolts(state);
  const open = line_v ? [] : [{ value: "", words: say("choice.choose") }];
  const all = [...open, ...volts.choices];
  return [
    choiceField("line_v", `${at}.line_v`, say("field.line_v"), line_v, all, volts.stands_for),
    numberField("max_w", `${at}.max_w`, say("field.max_w"), now("max_w"), {
      hint: say("field.max_w_hint"),
    }),
    numberField("min_load_ohm", `${at}.min_load_ohm`, say("field.min_load_ohm"), now("min_load_ohm"), {
      hint: say("field.min_load_ohm_hint"),
    }),
    numberField("source_ohm", `${at}.source_ohm`, say("field.source_ohm"), now("source_ohm")),
    choiceField("drive", `${at}.drive`, say("field.drive"), output?.drive ?? "", driveChoices()),
    wordsField("marked_class", `${at}.marked_class`, say("field.marked_class"), output?.marked_class ?? ""),
    numberField("high_pass_hz", `${at}.high_pass_hz`, say("field.high_pass_hz"), now("high_pass_hz"), {
      hint: say("field.high_pass_hz_hint"),
    }),
  ];
};

/** @param {State} state */
const newAmplifier = (state) =>
  freeName(say("new.amplifier"), (number) => say("new.amplifier_n", { number }), jobOf(state).amplifiers);

/** Outputs are lettered, as panels print them; beyond the letters they are numbered. @param {readonly {name: string}[]} others */
const newOutput = (others) => {
  const letters = [...say("new.outputs")];
  const numbered = (/** @type {string} */ number) => say("new.output_n", { number });
  return letters.find((letter) => others.every(({ name }) => name !== letter)) ?? freeName(numbered("1"), numbered, others);
};

/** @type {NonNullable<FormKind["check"]>} */
const checkVolts = ({ values }) =>
  values.line_v ? null : { field: "line_v", words: say("problem.line_v"), remedy: null };

/** @param {State} state @param {string} id */
const amplifierOf = (state, id) => jobOf(state).amplifiers.find((each) => each.id === id);

/** @param {State} state @param {string} id */
const outputOf = (state, id) =>
  jobOf(state)
    .amplifiers.flatMap(({ outputs }) => outputs)
    .find((each) => each.id === id) ?? null;

/** @type {FormKind} */
const add_amplifier = {
  words: "do.add_amplifier",
  check: checkVolts,
  ids: () => 2,
  lay: (state) => ({
    title: say("form.add_amplifier"),
    send: say("form.add"),
    fields: [
      wordsField("name", "amplifier.name", say("field.name"), newAmplifier(state)),
      wordsField("output", "output.name", say("field.first_output"), newOutput([])),
      ...outputFields(state, "output", null),
    ],
  }),
  build: (form, _state, newId) => {
    const id = newId();
    const [amplifier, output] = [{ id, pools: null, outputs: [] }, { id: newId() }];
    const isName = (/** @type {{name: string}} */ field) => field.name === "name";
    return [
      fill({ do: "add_amplifier", amplifier }, form, isName),
      fill({ do: "add_output", amplifier: id, output }, form, (field) => !isName(field)),
    ];
  },
};

/** @type {FormKind} */
const change_amplifier = {
  words: "do.change_amplifier",
  lay: (state, { thing = "" }) => ({
    title: say("form.change_amplifier"),
    send: say("form.save"),
    fields: [
      wordsField("name", "changes.name", say("field.name"), amplifierOf(state, thing)?.name ?? ""),
    ],
  }),
  build: (form) =>
    fillTouched({ do: "change_amplifier", amplifier: form.context.thing, changes: {} }, form),
};

/** @type {FormKind} */
const add_output = {
  words: "do.add_output",
  check: checkVolts,
  ids: () => 1,
  lay: (state, { thing = "" }) => ({
    title: say("form.add_output"),
    send: say("form.add"),
    fields: [
      wordsField("name", "output.name", say("field.name"), newOutput(amplifierOf(state, thing)?.outputs ?? [])),
      ...outputFields(state, "output", null),
    ],
  }),
  build: (form, _state, newId) => [
    fill({ do: "add_output", amplifier: form.context.thing, output: { id: newId() } }, form),
  ],
};

/** @type {FormKind} */
const change_output = {
  words: "do.change_output",
  lay: (state, { thing = "" }) => {
    const output = outputOf(state, thing);
    return {
      title: say("form.change_output"),
      send: say("form.save"),
      fields: [
        wordsField("name", "changes.name", say("field.name"), output?.name ?? ""),
        ...outputFields(state, "changes", output),
      ],
    };
  },
  build: (form) =>
    fillTouched({ do: "change_output", output: form.context.thing, changes: {} }, form),
};

export const supplyForms = { add_amplifier, change_amplifier, add_output, change_output };
