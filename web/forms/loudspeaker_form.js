/** The form that hangs one or several loudspeakers on a line in one go, alike and equally far apart. */

import { say } from "../say.js";
import { loudspeakerFields } from "./fitted_fields.js";
import { faceOf, nowText, splitHang } from "./lists.js";
import { blankFitted, kindSteps } from "./point_forms.js";
import { joinFields, joinOf } from "./join_fields.js";
import { farEnd, labelField, pointOf, sectionFields, voltsOf, zoneOf } from "./section_fields.js";
import { fill, numberField } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */
/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Form} Form */
/** @typedef {import("../state").Field} Field */
/** @typedef {import("../state").Zone} Zone */

const MOST_AT_ONCE = 500;

/**
 * How many ids to set aside: the text says how many at most, and only the core reads it truly.
 * @param {Form} form
 */
const mostOf = (form) => {
  const numbers = (form.values.run ?? "").match(/\d+/g) ?? [];
  return Math.min(MOST_AT_ONCE, Math.max(1, ...numbers.map(Number)));
};

/** The one like which the new ones are: the one at hand, else the last of the line. */
const modelOf = (/** @type {State} */ state, /** @type {Zone} */ zone, /** @type {string} */ at) => {
  const here = pointOf(state, at);
  const loudspeakers = zone.line.filter(({ fitted }) => fitted.is === "loudspeaker");
  return here?.fitted.is === "loudspeaker" ? here : (loudspeakers.at(-1) ?? null);
};

/**
 * The fields one fills in each time, as one reads them at the box: how many, of which kind, on which
 * tap of which row; then the cable to them. Where they hang and what they are called come behind.
 * `cuts`: whether they may be cut into a cable that is there.
 * @param {State} state @param {Zone} zone @param {{near: string, cuts: boolean}} where
 */
const runFields = (state, zone, { near, cuts }) => {
  const model = modelOf(state, zone, near);
  const now = (/** @type {string} */ name) => (model ? nowText(state, model.id, name) : "");
  const [, cable, joint] = sectionFields(state, "", null, model?.cable ?? zone.line.at(-1)?.cable ?? "");
  return [
    numberField("run", "run", say("field.run"), near ? "1" : "", {
      hint: say(state.manner.length === "ft" ? "field.run_feet_hint" : "field.run_hint"),
      between: "×",
    }),
    ...kindFields(state, model),
    numberField("tap_w", "fitted.tap_w", say("field.tap_w"), now("tap_w")),
    numberField(
      "tap_at_v",
      "fitted.tap_at_v",
      say("field.tap_at_v"),
      now("tap_at_v") || voltsOf(state, zone),
    ),
    numberField("first_m", "first_m", say("field.first_m"), "", {
      hint: say(cuts ? "field.first_m_cut_hint" : "field.first_m_hint"),
    }),
    ...[cable, joint].flatMap((field) => (field ? [{ ...field, at: field.name }] : [])),
  ];
};

/** Its kind, as that of the one like which it is; how its tap is known is asked behind the fold. @param {State} state @param {import("../state").Point | null} model @returns {Field[]} */
const kindFields = (state, model) => {
  const [kind, seen] = loudspeakerFields(state, "fitted", null);
  const value = model?.fitted.kind ?? "";
  return [...(kind ? [{ ...kind, value }] : []), ...(seen ? [{ ...seen, rarely: true }] : [])];
};

/** @param {State} state @param {import("./shape.js").Context} context */
const titleOf = (state, { ahead, after }) => {
  const title = faceOf(state, ahead ?? after ?? "")?.title;
  if (!title) return say("form.add_loudspeakers");
  return say(ahead ? "form.add_before" : "form.add_after", { title });
};

/** @type {FormKind} */
export const add_loudspeakers = {
  words: "do.add_loudspeakers",
  ids: mostOf,
  lay: (state, context) => {
    const zone = zoneOf(state, context.zone ?? "");
    if (!zone) throw new Error(`no zone ${context.zone}`);
    const near = context.ahead ?? context.after ?? "";
    const joins = joinFields(state, zone, { ...context, after: context.after ?? farEnd(zone) });
    const cuts = joins.some(({ name }) => name === "cut_in");
    return {
      title: titleOf(state, context),
      send: say("form.add"),
      fields: [
        ...runFields(state, zone, { near, cuts }),
        ...joins,
        labelField("fitted.label", null),
      ],
    };
  },
  build: (form, state, newId) => {
    const first = newId();
    const count = mostOf(form);
    const ids = { hand: first.slice(0, 3), next: Number(first.slice(3)), count };
    const { zone, after } = splitHang(form.values.after ?? "");
    const command = { do: "add_run", zone, after, ids, fitted: blankFitted("loudspeaker"), ...joinOf(form) };
    const step = fill(command, form);
    return [...kindSteps(state, form, "loudspeaker"), { ...step, typed: { run: form.values.run ?? "", ...step.typed } }];
  },
};
