/** Forms for the job as a whole: its name, its limits. */

import { say } from "../say.js";
import { jobOf } from "./lists.js";
import { fillTouched, numberField, wordsField } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */

/** @type {FormKind} */
const change_job = {
  words: "do.change_job",
  lay: (state) => {
    const { name, place, notes } = jobOf(state);
    return {
      title: say("form.change_job"),
      send: say("form.save"),
      fields: [
        wordsField("name", "changes.name", say("field.job_name"), name),
        wordsField("place", "changes.place", say("field.place"), place),
        { ...wordsField("notes", "changes.notes", say("field.notes"), notes), is: "long" },
      ],
    };
  },
  build: (form) => fillTouched({ do: "change_job", changes: {} }, form),
};

const LIMITS = /** @type {const} */ ([
  "load_fraction",
  "loss_db",
  "conductor_c",
  "thinnest_mm2",
  "thickest_mm2",
]);

/** @type {FormKind} */
const set_limits = {
  words: "do.set_limits",
  lay: (state) => ({
    title: say("form.set_limits"),
    send: say("form.save"),
    fields: LIMITS.map((name) =>
      numberField(
        name,
        `changes.${name}`,
        say(`limits.${name}`),
        state.desk?.seen.faces.job.fields?.[name] ?? "",
        { hint: say(`limits.${name}_hint`), negative: name === "conductor_c" },
      ),
    ),
  }),
  build: (form) => fillTouched({ do: "set_limits", changes: {} }, form),
};

export const jobForms = { change_job, set_limits };
