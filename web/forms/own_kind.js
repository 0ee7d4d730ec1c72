/** What the three forms for a kind of one's own have in common. */

import { kindFace, kindsOf } from "../kinds.js";
import { apart, say } from "../say.js";
import { fill } from "./shape.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Family} Family */
/** @typedef {import("../state").Form} Form */
/** @typedef {import("../state").Field} Field */
/** @typedef {import("./shape.js").Context} Context */
/** @typedef {import("./shape.js").NewId} NewId */

/**
 * The kind a form starts from: the one it changes, the one like which a new one is, or none;
 * its fields as they stand, and its numbers as they would be typed.
 * @param {State} state @param {Family} family @param {Context} context
 */
export const startOf = (state, family, { kind = "", like = "" }) => {
  const id = kind || like;
  const found = kindsOf(state, family).find((each) => each.id === id);
  const face = found ? kindFace(state, family, id) : undefined;
  return {
    name: !found ? "" : kind ? found.name : say("kinds.like_name", { name: apart(face?.title ?? found.name) }),
    found: /** @type {Record<string, any>} */ (found ?? {}),
    text: (/** @type {string} */ field) => face?.fields[field] ?? "",
    rows: face?.rows ?? [],
  };
};

/**
 * The step that puts the kind into the job, its id new unless it changes one that is there.
 * @param {Family} family @param {{form: Form, state: State, newId: NewId}} how
 * @param {Record<string, unknown>} [blank] what it has at the least
 * @param {Record<string, unknown>} [more] what stands beside the kind in the command
 */
export const useStep = (family, { form, state, newId }, blank = {}, more = {}) => {
  const { kind: id = "", like = "" } = form.context;
  const before = kindsOf(state, family).find((each) => each.id === (id || like));
  const kind = { ...blank, ...before, id: id || newId() };
  const wanted = (/** @type {Field} */ field) => !field.at.startsWith("rows.") || hasRow(more, field);
  return fill({ do: "use_kind", family, kind, ...more }, form, wanted);
};

/** @param {Record<string, unknown>} more @param {Field} field */
const hasRow = ({ rows }, field) => Array.isArray(rows) && Number(field.at.split(".")[1]) < rows.length;

/** @param {Context} context @param {"loudspeaker" | "cable" | "attenuator"} one */
export const sheetHead = ({ kind }, one) => ({
  title: say(/** @type {any} */ (kind ? `form.change_${one}_kind` : `form.own_${one}`)),
  send: say(kind ? "form.save" : "form.add"),
});
