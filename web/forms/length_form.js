/** The form that says at once how long the sections of a line are: the home run, and those behind it. */

import { say } from "../say.js";
import { zoneOf } from "./section_fields.js";
import { choiceField, fill, numberField } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */

/** Asked only where a length is known: it is not typed over unless somebody says so. */
const which = () =>
  choiceField("sections", "sections", say("field.sections"), "unknown", [
    { value: "unknown", words: say("choice.sections_unknown") },
    { value: "all", words: say("choice.sections_all") },
  ]);

/** @type {FormKind} */
export const set_lengths = {
  words: "do.set_lengths",
  lay: (state, { zone: id = "" }) => {
    const line = zoneOf(state, id)?.line ?? [];
    const known = line.some(({ length_m }) => typeof length_m === "number");
    return {
      title: say("form.set_lengths"),
      send: say("form.save"),
      fields: [
        numberField("home_run_m", "home_run_m", say("field.home_run_m"), "", { hint: say("field.home_run_m_hint") }),
        numberField("further_m", "further_m", say("field.further_m"), "", { hint: say("field.further_m_hint") }),
        ...(known ? [which()] : []),
      ],
    };
  },
  build: (form) => [fill({ do: "set_lengths", zone: form.context.zone, sections: "unknown" }, form)],
};
