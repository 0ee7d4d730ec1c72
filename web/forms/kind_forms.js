/** Forms for kinds of one's own: a cable, a wall attenuator; a loudspeaker has a file of its own. */

import { say } from "../say.js";
import { overrideFields } from "./fitted_fields.js";
import { choices, yesNo, yesNoText } from "./lists.js";
import { own_loudspeaker } from "./loudspeaker_kind_form.js";
import { sheetHead, startOf, useStep } from "./own_kind.js";
import { choiceField, numberField, wordsField } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */
/** @typedef {import("../state").Form} Form */

const SIZES = /** @type {const} */ (["area_mm2", "awg", "loop_ohm_per_km"]);

/** How a cable's size is known. @param {Record<string, any>} found @param {boolean} feet */
const sizeOf = (found, feet) =>
  SIZES.find((each) => typeof found[each] === "number") ?? (feet ? "awg" : "area_mm2");

const classes = () => ({
  choices: choices([
    ["", say("choice.not_known")],
    ["1", say("choice.class_1")],
    ["2", say("choice.class_2")],
    ["5", say("choice.class_5")],
  ]),
  stands_for: { "": null, 1: 1, 2: 2, 5: 5 },
});

/** @param {ReturnType<typeof startOf>} start @param {boolean} feet */
const sizeFields = ({ found, text }, feet) => {
  const made = classes();
  const only = (/** @type {string} */ size) => ({ when: { field: "size", is: size } });
  return [
    choiceField(
      "size",
      "",
      say("field.size"),
      sizeOf(found, feet),
      choices(SIZES.map((each) => [each, say(`choice.size_${each}`)])),
    ),
    numberField("awg", "kind.awg", say("field.awg"), text("awg"), only("awg")),
    numberField("area_mm2", "kind.area_mm2", say("field.area_mm2"), text("area_mm2"), only("area_mm2")),
    {
      ...choiceField("class", "kind.class", say("field.class"), String(found.class ?? ""), made.choices, made.stands_for),
      ...only("area_mm2"),
    },
    numberField("loop_ohm_per_km", "kind.loop_ohm_per_km", say("field.loop_ohm_per_km"), text("loop_ohm_per_km"), {
      hint: say("field.loop_ohm_per_km_hint"),
      between: "/",
      ...only("loop_ohm_per_km"),
    }),
  ];
};

/** @param {ReturnType<typeof startOf>} start */
const makeFields = ({ found, text }) => {
  const answers = yesNo();
  const asked = (/** @type {"stranded" | "tinned"} */ name) =>
    choiceField(name, `kind.${name}`, say(`field.${name}`), yesNoText(found[name]), answers.choices, answers.stands_for);
  return [
    choiceField("metal", "kind.metal", say("field.metal"), found.metal ?? "copper", [
      { value: "copper", words: say("choice.copper") },
      { value: "copper_clad_aluminium", words: say("choice.copper_clad_aluminium") },
    ]),
    { ...asked("stranded"), when: { field: "size", is: "awg" } },
    asked("tinned"),
    numberField("inductance_uh_per_m", "kind.inductance_uh_per_m", say("field.inductance_uh_per_m"), text("inductance_uh_per_m"), {
      hint: say("field.pair_hint"),
    }),
    numberField("capacitance_pf_per_m", "kind.capacitance_pf_per_m", say("field.capacitance_pf_per_m"), text("capacitance_pf_per_m"), {
      hint: say("field.pair_hint"),
    }),
  ];
};

/** @type {FormKind} */
const own_cable = {
  words: "do.use_kind",
  ids: () => 1,
  lay: (state, context) => {
    const start = startOf(state, "cables", context);
    return {
      ...sheetHead(context, "cable"),
      fields: [
        wordsField("name", "kind.name", say("field.name"), start.name),
        ...sizeFields(start, state.manner.length === "ft"),
        ...makeFields(start),
      ],
    };
  },
  check: ({ values }) => {
    const { size = "" } = values;
    return values[size]?.trim() ? null : { field: size, words: say("problem.cable_size"), remedy: null };
  },
  build: (form, state, newId) => [useStep("cables", { form, state, newId })],
};

/** @type {FormKind} */
const own_attenuator = {
  words: "do.use_kind",
  ids: () => 1,
  lay: (state, context) => {
    const { name, found, text } = startOf(state, "attenuators", context);
    return {
      ...sheetHead(context, "attenuator"),
      fields: [
        wordsField("name", "kind.name", say("field.name"), name),
        numberField("rated_w", "kind.rated_w", say("field.rated_w"), text("rated_w")),
        numberField("rated_at_v", "kind.rated_at_v", say("field.rated_at_v"), text("rated_at_v"), {
          hint: say("field.rated_at_v_hint"),
        }),
        choiceField("form", "kind.form", say("field.form"), found.form ?? "", [
          { value: "", words: say("choice.not_known") },
          { value: "autotransformer", words: say("choice.autotransformer") },
          { value: "pad", words: say("choice.pad") },
        ]),
        numberField("insertion_db", "kind.insertion_db", say("field.insertion_db"), text("insertion_db")),
        ...overrideFields("kind", found),
      ],
    };
  },
  build: (form, state, newId) => [useStep("attenuators", { form, state, newId })],
};

export const kindForms = { own_loudspeaker, own_cable, own_attenuator };
