/** Fields of what is fitted at a point, the same when it is added and when it is changed. */

import { say } from "../say.js";
import { kindFace, kindsOf } from "../kinds.js";
import { choices, kindField, nowText, yesNo, yesNoText } from "./lists.js";
import { choiceField, numberField } from "./shape.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Point} Point */
/** @typedef {import("../state").Field} Field */

/** @param {State} state @param {Point | null} point */
const textOf = (state, point) => (/** @type {string} */ field) =>
  point ? nowText(state, point.id, field) : "";

/** @param {string} at @param {Point | null} point */
const kindNow = (at, point) => ({
  name: "kind",
  at: `${at}.kind`,
  words: say("field.kind"),
  value: point?.fitted.kind ?? "",
});

/** @param {State} state @param {string} at @param {Point | null} point @returns {Field[]} */
export const loudspeakerFields = (state, at, point) => {
  const now = textOf(state, point);
  return [
    kindField(state, "loudspeakers", kindNow(at, point)),
    choiceField(
      "seen",
      `${at}.seen`,
      say("field.seen"),
      point?.fitted.seen ?? "",
      choices([
        ["", say("choice.not_known")],
        ["drawing", say("choice.seen_drawing")],
        ["found", say("choice.seen_found")],
        ["set", say("choice.seen_set")],
        ["checked", say("choice.seen_checked")],
      ]),
    ),
    numberField("planned_tap_w", `${at}.planned_tap_w`, say("field.planned_tap_w"), now("planned_tap_w"), { rarely: true }),
    numberField("direct_ohm", `${at}.direct_ohm`, say("field.direct_ohm"), now("direct_ohm"), {
      hint: say("field.direct_ohm_hint"),
      rarely: true,
    }),
  ];
};

/**
 * Whether and how a page bypasses a control.
 * @param {string} at
 * @param {{override?: boolean | null, override_sense?: string | null} | undefined} control
 * @returns {Field[]}
 */
export const overrideFields = (at, control) => {
  const { choices: answers, stands_for } = yesNo();
  const now = yesNoText(control?.override);
  return [
    {
      ...choiceField("override", `${at}.override`, say("field.override"), now, answers, stands_for),
      hint: say("field.override_hint"),
    },
    choiceField(
      "override_sense",
      `${at}.override_sense`,
      say("field.override_sense"),
      control?.override_sense ?? "",
      choices([
        ["", say("choice.not_known")],
        ["power_bypasses", say("choice.power_bypasses")],
        ["loss_bypasses", say("choice.loss_bypasses")],
      ]),
    ),
  ];
};

/**
 * A field that may be left empty, since the kind of the control says it, too: its number as it is
 * typed there, or the words of the choice made there.
 * @param {State} state @param {Field} field @returns {Field}
 */
const orByKind = (state, field) => {
  /** @param {Record<string, any>} kind */
  const said = (kind) => {
    if (field.is === "number") return kindFace(state, "attenuators", kind.id)?.fields[field.name];
    const own = kind[field.name];
    const value = typeof own === "boolean" ? yesNoText(own) : own;
    return value && field.choices?.find((each) => each.value === value)?.words;
  };
  const kinds = kindsOf(state, "attenuators");
  return { ...field, by_kind: Object.fromEntries(kinds.map((kind) => [kind.id, said(kind) ?? ""])) };
};

/** @param {State} state @param {string} at @param {Point | null} point @returns {Field[]} */
export const attenuatorFields = (state, at, point) => {
  const now = textOf(state, point);
  const fitted = point?.fitted;
  const forms = choices([
    ["", say("choice.not_known")],
    ["autotransformer", say("choice.autotransformer")],
    ["pad", say("choice.pad")],
  ]);
  return [
    kindField(state, "attenuators", kindNow(at, point)),
    ...[
      numberField("rated_w", `${at}.rated_w`, say("field.rated_w"), now("rated_w")),
      numberField("rated_at_v", `${at}.rated_at_v`, say("field.rated_at_v"), now("rated_at_v")),
      numberField("insertion_db", `${at}.insertion_db`, say("field.insertion_db"), now("insertion_db")),
      choiceField("form", `${at}.form`, say("field.form"), fitted?.form ?? "", forms),
      ...overrideFields(at, fitted),
    ].map((field) => orByKind(state, field)),
  ];
};

/** @param {State} state @param {string} at @param {Point | null} point @returns {Field[]} */
export const existingFields = (state, at, point) => {
  const now = textOf(state, point);
  return [
    numberField("ohm", `${at}.ohm`, say("field.existing_ohm"), now("ohm"), {
      hint: say("field.existing_ohm_hint"),
    }),
    numberField("hz", `${at}.hz`, say("field.existing_hz"), now("hz")),
    numberField("w", `${at}.w`, say("field.existing_w"), now("w"), {
      hint: say("field.existing_w_hint"),
    }),
  ];
};

/** @param {State} state @param {string} at @param {Point | null} point @param {string} is */
export const fittedFields = (state, at, point, is) => {
  if (is === "loudspeaker") return loudspeakerFields(state, at, point);
  if (is === "attenuator") return attenuatorFields(state, at, point);
  return is === "existing" ? existingFields(state, at, point) : [];
};
