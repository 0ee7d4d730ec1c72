/** The form that puts an attenuator in front of a point, into the cable that leads to it. */

import { say } from "../say.js";
import { attenuatorFields } from "./fitted_fields.js";
import { joinFields, joinOf } from "./join_fields.js";
import { splitHang } from "./lists.js";
import { blankFitted, kindSteps } from "./point_forms.js";
import { labelField, pointOf, sectionFields, zoneOf } from "./section_fields.js";
import { fill } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */

/** Unless the person says otherwise it stands right behind the one before it. */
const AT_ONCE = { value: "0", hint: say("field.from_before_hint") };

/** @type {FormKind} */
const put_attenuator = {
  words: "do.add_attenuator",
  ids: () => 1,
  lay: (state, { zone: id = "", after = "", ahead = "" }) => {
    const zone = zoneOf(state, id);
    if (!zone) throw new Error(`no zone ${id}`);
    const [kind, ...others] = attenuatorFields(state, "points.0.fitted", null);
    const [length, cable] = sectionFields(state, "points.0", null, pointOf(state, ahead)?.cable ?? "");
    return {
      title: say("form.put_attenuator"),
      send: say("form.add"),
      fields: [
        ...(kind ? [kind] : []),
        ...(length ? [{ ...length, words: say("field.from_before_m"), ...AT_ONCE }] : []),
        ...joinFields(state, zone, { after, ahead }),
        labelField("points.0.fitted.label", null),
        ...others,
        ...(cable ? [cable] : []),
      ],
    };
  },
  build: (form, state, newId) => {
    const { zone, after } = splitHang(form.values.after ?? "");
    const points = [{ id: newId(), after, fitted: blankFitted("attenuator") }];
    return [
      ...kindSteps(state, form, "attenuator"),
      fill({ do: "add_points", zone, points, ...joinOf(form) }, form),
    ];
  },
};

export const ladderForms = { put_attenuator };
