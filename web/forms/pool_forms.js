/** Forms for pools: watts that several outputs of one amplifier share. */

import { say } from "../say.js";
import { choices, faceOf, jobOf, nowText } from "./lists.js";
import { fill, numberField } from "./shape.js";

/** @typedef {import("./shape.js").FormKind} FormKind */
/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Form} Form */
/** @typedef {import("../state").Field} Field */

/** @param {State} state @param {string} id */
const amplifierOf = (state, id) => {
  const amplifier = jobOf(state).amplifiers.find((each) => each.id === id);
  if (!amplifier) throw new Error(`no amplifier ${id}`);
  return amplifier;
};

/** Which outputs are ticked, as their ids with blanks between. */
const ticked = (/** @type {Form} */ form) => (form.values.outputs ?? "").split(" ").filter(Boolean);

/** @type {FormKind} */
const pool = {
  words: "do.share",
  lay: (state, { thing = "", at = "" }) => {
    const { outputs, pools } = amplifierOf(state, thing);
    const now = pools?.[Number(at)];
    /** @type {Field} */
    const which = {
      name: "outputs",
      at: "",
      is: "flags",
      words: say("field.pool_outputs"),
      value: (now?.outputs ?? outputs.map(({ id }) => id)).join(" "),
      choices: choices(outputs.map(({ id, name: output }) => [id, say("choice.own_output", { output, is: faceOf(state, id)?.line ?? "" })])),
    };
    const text = (/** @type {string} */ field) =>
      now ? nowText(state, thing, `pools.${at}.${field}`) : "";
    return {
      title: say("form.pool"),
      send: say("form.save"),
      fields: [
        numberField("w", `changes.pools.${at}.w`, say("field.pool_w"), text("w")),
        which,
        numberField("other_w", `changes.pools.${at}.other_w`, say("field.other_w"), text("other_w"), {
          hint: say("field.other_w_hint"),
        }),
      ],
    };
  },
  check: (form) =>
    ticked(form).length
      ? null
      : { field: "outputs", words: say("problem.no_outputs"), remedy: null },
  build: (form, state) => {
    const { thing: amplifier = "", at } = form.context;
    const now = amplifierOf(state, amplifier).pools ?? [];
    const pools = [...now];
    pools[Number(at)] = { w: now[Number(at)]?.w ?? 0, outputs: ticked(form), other_w: null };
    return [fill({ do: "change_amplifier", amplifier, changes: { pools } }, form)];
  },
};

export const poolForms = { pool };
