/** The form for a loudspeaker kind of one's own: the rows of its selector, and how loud it plays. */

import { say } from "../say.js";
import { choices, jobOf } from "./lists.js";
import { sheetHead, startOf, useStep } from "./own_kind.js";
import { choiceField, numberField, wordsField } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */
/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Form} Form */
/** @typedef {import("../state").Field} Field */
/** @typedef {ReturnType<typeof startOf>} Start */

/** A selector prints two rows at most, as a rule (common practice). */
const SHOWN_ROWS = 2;
const MOUNTS = /** @type {const} */ (["ceiling", "pendant", "wall", "pole"]);

/** The usual line voltages, those of this job first, then from the highest down. @param {State} state */
const usualVolts = (state) => {
  const used = new Set(jobOf(state).amplifiers.flatMap(({ outputs }) => outputs.map(({ line_v }) => line_v)));
  const all = [...state.catalogue.line_volts].reverse();
  return [...all.filter(({ line_v }) => used.has(line_v)), ...all.filter(({ line_v }) => !used.has(line_v))];
};

/**
 * A field for the taps of each usual voltage, and of one more row where a selector has one.
 * @param {State} state @param {Start} start @returns {Field[]}
 */
const rowFields = (state, { rows }) => {
  const usual = usualVolts(state);
  const others = rows.filter(({ line_v }) => !usual.some((each) => each.line_v === line_v));
  const taps = (/** @type {number} */ at, /** @type {string} */ words, /** @type {string} */ value) =>
    numberField(`taps_${at}`, `rows.${at}.taps`, words, value, { between: "/" });
  const known = usual.map(({ line_v, shown }, at) => {
    const row = rows.find((each) => each.line_v === line_v);
    const field = taps(at, say("field.taps_at", { at_v: shown }), row?.text ?? "");
    if (!at) return { ...field, hint: say("field.taps_hint") };
    return at < SHOWN_ROWS ? field : { ...field, rarely: true };
  });
  const rest = (others.length ? others : [{ shown: "", text: "" }]).flatMap(({ shown, text }, number) => {
    const at = usual.length + number;
    const hint = { hint: say("field.other_row_hint") };
    return [
      { ...numberField(`row_${at}`, `rows.${at}.at_v`, say("field.other_row"), shown, hint), rarely: true },
      { ...taps(at, say("field.other_row_taps"), text), rarely: true },
    ];
  });
  return [...known, ...rest];
};

/** @param {Start} start @returns {Field[]} */
const wattsFields = ({ found, text }) => [
  {
    rarely: true,
    ...choiceField(
      "tap_means",
      "kind.tap_means",
      say("field.tap_means"),
      found.tap_means ?? "",
      choices([
        ["", say("choice.not_known")],
        ["drawn", say("choice.drawn")],
        ["delivered", say("choice.delivered")],
      ]),
    ),
    hint: say("field.tap_means_hint"),
  },
  numberField("transformer_loss_db", "kind.transformer_loss_db", say("field.transformer_loss_db"), text("transformer_loss_db"), {
    hint: say("field.transformer_loss_db_hint"),
    rarely: true,
  }),
];

/** @param {Start} start @returns {Field[]} */
const labelFields = ({ found, text }) => {
  const listed = MOUNTS.map((each) => ({ value: each, words: say(`choice.mount_${each}`) }));
  const mount = found.mount ?? "";
  const odd = mount && !listed.some(({ value }) => value === mount) ? [{ value: mount, words: mount }] : [];
  return [
    numberField("rated_w", "kind.rated_w", say("field.kind_rated_w"), text("rated_w")),
    numberField("sensitivity_db", "kind.sensitivity_db", say("field.sensitivity_db"), text("sensitivity_db")),
    numberField("coverage_h_deg", "kind.coverage_h_deg", say("field.coverage_h_deg"), text("coverage_h_deg")),
    numberField("coverage_v_deg", "kind.coverage_v_deg", say("field.coverage_v_deg"), text("coverage_v_deg"), { rarely: true }),
    {
      ...choiceField("mount", "kind.mount", say("field.mount"), mount, [
        { value: "", words: say("choice.not_known") },
        ...listed,
        ...odd,
      ]),
      rarely: true,
    },
  ];
};

/**
 * The rows of the command: the usual ones always, another only where something is typed for it.
 * @param {Form} form @param {State} state
 */
const rowsOf = ({ fields, values }, state) => {
  const usual = usualVolts(state).map(({ line_v }) => ({ at_v: line_v, taps: null }));
  const others = fields.filter(({ name }) => name.startsWith("row_"));
  const typed = others.findLastIndex(
    ({ name }) => values[name]?.trim() || values[name.replace("row", "taps")]?.trim(),
  );
  return [...usual, ...others.slice(0, typed + 1).map(() => ({ at_v: null, taps: null }))];
};

/** @type {FormKind} */
export const own_loudspeaker = {
  words: "do.use_kind",
  ids: () => 1,
  lay: (state, context) => {
    const start = startOf(state, "loudspeakers", context);
    return {
      ...sheetHead(context, "loudspeaker"),
      fields: [
        wordsField("name", "kind.name", say("field.name"), start.name),
        ...rowFields(state, start),
        ...labelFields(start),
        ...wattsFields(start),
      ],
    };
  },
  build: (form, state, newId) => {
    const rows = rowsOf(form, state);
    return [useStep("loudspeakers", { form, state, newId }, { taps: [] }, { rows })];
  },
};
