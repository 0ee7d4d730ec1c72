/** Forms for zones: their names, where they land, how much loss they may have. */

import { say } from "../say.js";
import { freeName, jobOf, nowText, outputChoices } from "./lists.js";
import { choiceField, fill, fillTouched, numberField, wordsField } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */
/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Zone} Zone */

/** @param {State} state @param {string} at @param {Zone | null} zone @param {string} output */
const landing = (state, at, zone, output) => [
  choiceField("output", `${at}.output`, say("field.output"), output, outputChoices(state)),
  {
    ...choiceField(
      "page_output",
      `${at}.page_output`,
      say("field.page_output"),
      zone?.page_output ?? "",
      outputChoices(state),
    ),
    hint: say("field.page_output_hint"),
  },
  numberField(
    "loss_db",
    `${at}.loss_db`,
    say("field.zone_loss_db"),
    zone ? nowText(state, zone.id, "loss_db") : "",
    { hint: say("field.zone_loss_db_hint") },
  ),
];

/** @param {State} state */
const newZone = (state) =>
  freeName(say("new.zone"), (number) => say("new.zone_n", { number }), jobOf(state).zones);

/** @type {FormKind} */
const add_zone = {
  words: "do.add_zone",
  ids: () => 1,
  lay: (state, { output }) => {
    const outputs = jobOf(state).amplifiers.flatMap((amplifier) => amplifier.outputs);
    const only = outputs.length === 1 ? outputs[0]?.id : "";
    return {
      title: say("form.add_zone"),
      send: say("form.add"),
      fields: [
        wordsField("name", "zone.name", say("field.zone_name"), newZone(state)),
        ...landing(state, "zone", null, output ?? only ?? ""),
      ],
    };
  },
  build: (form, _state, newId) => [
    fill({ do: "add_zone", zone: { id: newId(), areas: [], line: [] } }, form),
  ],
};

/** @type {FormKind} */
const change_zone = {
  words: "do.change_zone",
  lay: (state, { zone: id }) => {
    const zone = jobOf(state).zones.find((each) => each.id === id) ?? null;
    return {
      title: say("form.change_zone"),
      send: say("form.save"),
      fields: [
        wordsField("name", "changes.name", say("field.zone_name"), zone?.name ?? ""),
        ...landing(state, "changes", zone, zone?.output ?? ""),
      ],
    };
  },
  build: (form) => fillTouched({ do: "change_zone", zone: form.context.zone, changes: {} }, form),
};

export const zoneForms = { add_zone, change_zone };
