/** The form that hangs one or several loudspeakers on a line, alike and in a row. */

import { say } from "../say.js";
import { loudspeakerFields } from "./fitted_fields.js";
import { splitHang } from "./lists.js";
import { blankFitted, kindSteps } from "./point_forms.js";
import { farEnd, hangFields, labelField, sectionFields, voltsOf, zoneOf } from "./section_fields.js";
import { fill, numberField } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */
/** @typedef {import("../state").Form} Form */

const MOST_AT_ONCE = 200;

/** @param {Form} form */
const countOf = (form) => {
  const count = Number(form.values.count?.trim());
  return Number.isInteger(count) && count > 0 && count <= MOST_AT_ONCE ? count : null;
};

/** The form as it reads for one of the loudspeakers. @param {Form} form @param {number} number */
const formOf = (form, number) => ({
  ...form,
  fields: form.fields.map((field) => ({ ...field, at: field.at.replace(/^points\.0/, `points.${number}`) })),
});

/** @type {FormKind} */
export const add_loudspeakers = {
  words: "do.add_loudspeakers",
  ids: (form) => countOf(form) ?? 0,
  lay: (state, { zone: id = "", after }) => {
    const zone = zoneOf(state, id);
    if (!zone) throw new Error(`no zone ${id}`);
    const [kind, seen] = loudspeakerFields(state, "points.0.fitted", null);
    const volts = voltsOf(state, zone);
    return {
      title: say("form.add_loudspeakers"),
      send: say("form.add"),
      fields: [
        numberField("count", "", say("field.count"), "1", { hint: say("field.count_hint") }),
        numberField("tap_w", "points.0.fitted.tap_w", say("field.tap_w"), ""),
        numberField("tap_at_v", "points.0.fitted.tap_at_v", say("field.tap_at_v"), volts ? String(volts) : ""),
        ...sectionFields(state, "points.0", null, zone.line.at(-1)?.cable ?? ""),
        ...[kind, seen].filter((field) => field !== undefined),
        labelField("points.0.fitted.label", null),
        ...hangFields(state, zone, after ?? farEnd(zone)),
      ],
    };
  },
  check: (form) =>
    countOf(form) ? null : { field: "count", words: say("problem.count"), remedy: null },
  build: (form, state, newId) => {
    const { zone, after } = splitHang(form.values.after ?? "");
    const points = [];
    /** @type {Record<string, string>} */
    const typed = {};
    let behind = after;
    for (let number = 0; number < (countOf(form) ?? 0); number += 1) {
      const point = { id: newId(), after: behind, fitted: blankFitted("loudspeaker") };
      const one = fill({ do: "", points: { [number]: point } }, formOf(form, number));
      Object.assign(typed, one.typed);
      points.push(point);
      behind = point.id;
    }
    const command = { do: "add_points", zone, points, splice: form.values.splice === "run" };
    return [...kindSteps(state, form), { command, typed }];
  },
};
