/** Forms for single points of a line: attenuators, existing parts, junctions; changing, moving. */

import { say } from "../say.js";
import { fittedFields } from "./fitted_fields.js";
import { hangChoices, nowText, splitHang, useKind } from "./lists.js";
import { farEnd, hangFields, labelField, pointOf, sectionFields, zoneOf } from "./section_fields.js";
import { choiceField, fill, fillTouched, numberField } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */
/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Form} Form */
/** @typedef {import("../state").Step} Step */

/**
 * The kinds a form names, copied into the job before they are used.
 * @param {State} state @param {Form} form @param {string} is what is fitted at its point
 */
export const kindSteps = (state, form, is) => {
  const { kind = "", cable = "" } = form.values;
  const family = is === "attenuator" ? "attenuators" : "loudspeakers";
  return [...useKind(state, family, kind), ...useKind(state, "cables", cable)];
};

/**
 * What a point is before anything is known of it.
 * @param {string} is
 */
export const blankFitted = (is) => {
  if (is === "loudspeaker") return { is, connected: true, label: "" };
  // A control that nobody has looked at is taken as fully open: the worst load.
  if (is === "attenuator") return { is, set_db: 0, off: false, label: "" };
  return { is, label: "" };
};

/** @param {"attenuator" | "existing" | "junction"} is @returns {FormKind} */
const addOne = (is) => ({
  words: `do.add_${is}`,
  ids: () => 1,
  lay: (state, { zone: id = "", after }) => {
    const zone = zoneOf(state, id);
    if (!zone) throw new Error(`no zone ${id}`);
    return {
      title: say(`form.add_${is}`),
      send: say("form.add"),
      fields: [
        labelField("points.0.fitted.label", null),
        ...fittedFields(state, "points.0.fitted", null, is),
        ...sectionFields(state, "points.0", null, zone.line.at(-1)?.cable ?? ""),
        ...hangFields(state, zone, after ?? farEnd(zone)),
      ],
    };
  },
  build: (form, state, newId) => {
    const { zone, after } = splitHang(form.values.after ?? "");
    const points = [{ id: newId(), after, fitted: blankFitted(is) }];
    const splice = form.values.splice === "run";
    return [...kindSteps(state, form, is), fill({ do: "add_points", zone, points, splice }, form)];
  },
});

/** @type {FormKind} */
const change_point = {
  words: "do.change_point",
  lay: (state, { thing = "" }) => {
    const point = pointOf(state, thing) ?? null;
    return {
      title: say("form.change_point"),
      send: say("form.save"),
      fields: [
        labelField("changes.label", point),
        ...fittedFields(state, "changes", point, point?.fitted.is ?? ""),
        ...sectionFields(state, "changes", point),
      ],
    };
  },
  build: (form, state) => [
    ...kindSteps(state, form, pointOf(state, form.context.thing ?? "")?.fitted.is ?? ""),
    ...fillTouched({ do: "change_point", point: form.context.thing, changes: {} }, form),
  ],
};

/** @type {FormKind} */
const move_point = {
  words: "do.move_point",
  // for the junction that stays where the line divides or its cable changes
  ids: () => 1,
  lay: (state, { thing = "", zone: id = "" }) => {
    const after = pointOf(state, thing)?.after ?? "";
    const places = hangChoices(state).filter(({ value }) => !value.endsWith(`/${thing}`));
    const zone = zoneOf(state, id);
    if (!zone) throw new Error(`no zone ${id}`);
    const [, splice] = hangFields(state, zone, after);
    return {
      title: say("form.move_point"),
      send: say("form.move"),
      fields: [
        choiceField("after", "", say("field.after"), `${id}/${after}`, places),
        ...(splice ? [splice] : []),
        ...sectionFields(state, "changes", pointOf(state, thing) ?? null).slice(0, 2),
      ],
    };
  },
  build: (form, state, newId) => {
    const { thing: point = "" } = form.context;
    const { zone, after } = splitHang(form.values.after ?? "");
    const splice = form.values.splice === "run";
    return [
      ...kindSteps(state, form, ""),
      { command: { do: "move_point", point, zone, after, splice, junction: newId() } },
      ...fillTouched({ do: "change_point", point, changes: {} }, form),
    ];
  },
};

/** @type {FormKind} */
const set_attenuator = {
  words: "do.set_attenuator",
  lay: (state, { thing = "" }) => ({
    title: say("form.set_attenuator"),
    send: say("form.save"),
    fields: [
      numberField("set_db", "set_db", say("field.set_db"), nowText(state, thing, "set_db"), {
        hint: say("field.set_db_hint"),
        negative: true,
      }),
    ],
  }),
  build: (form) => [
    fill({ do: "set_attenuator", point: form.context.thing, off: false }, form),
  ],
};

/** @type {FormKind} */
const set_tap = {
  words: "do.set_tap",
  lay: (state, { thing = "" }) => ({
    title: say("form.set_tap"),
    send: say("form.save"),
    fields: [
      numberField("tap_w", "tap_w", say("field.tap_w"), nowText(state, thing, "tap_w")),
      numberField("tap_at_v", "tap_at_v", say("field.tap_at_v"), nowText(state, thing, "tap_at_v"), {
        hint: say("field.tap_at_v_hint"),
      }),
    ],
  }),
  build: (form) => [fill({ do: "set_tap", point: form.context.thing }, form)],
};

export const pointForms = {
  add_attenuator: addOne("attenuator"),
  add_existing: addOne("existing"),
  add_junction: addOne("junction"),
  change_point,
  move_point,
  set_attenuator,
  set_tap,
};
