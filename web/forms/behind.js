/** A form that was opened out of another goes back to it, with what it made chosen there. */

import { forms } from "./forms.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Bench} Bench */
/** @typedef {import("../state").Form} Form */
/** @typedef {import("../state").Act} Act */

/** What stands behind a form that is opened now. @param {Bench | null} bench @returns {Bench | null} */
export const standsBehind = (bench) =>
  bench?.is === "form" || bench?.is === "swap" ? bench : null;

/** The form that is open, a working over it or not. @param {Bench | null} bench @returns {Form | null} */
export const formIn = (bench) => {
  if (bench?.is === "working") return formIn(bench.back);
  return bench?.is === "form" ? bench.form : null;
};

/**
 * The bench with another in place of the open form.
 * @param {Bench | null} bench @param {Bench | null} next @returns {Bench | null}
 */
export const inPlaceOfForm = (bench, next) => (bench?.is === "working" ? { ...bench, back: next } : next);

/** A form and those it was opened out of. @param {Form} form @returns {Form[]} */
export const chainOf = (form) =>
  form.behind?.is === "form" ? [form, ...chainOf(form.behind.form)] : [form];

/**
 * Where a form that is closed leads.
 * @param {Form} form @returns {Bench | null}
 */
export const leftFor = ({ behind, context: { thing } }) =>
  behind ?? (thing ? { is: "thing", id: thing } : null);

/**
 * Where a form leads whose act is done: the form behind it is laid anew, for the job has changed.
 * @param {Form} form @param {Act} act @param {State} state as it is with the act done
 * @returns {Bench | null}
 */
export const doneFor = (form, act, state) => {
  const back = leftFor(form);
  const kind = back?.is === "form" && forms[back.form.name];
  const { field = "" } = form.context;
  if (!kind || back?.is !== "form" || !field) return back;
  const made = /** @type {{id?: string}} */ (act.steps.at(-1)?.command.kind ?? {});
  const values = { ...back.form.values, [field]: made.id ?? "" };
  const touched = [...new Set([...back.form.touched, field])];
  const { fields } = kind.lay(state, back.form.context);
  return { is: "form", form: { ...back.form, fields, values, touched } };
};
