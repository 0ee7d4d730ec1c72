/**
 * Forms as data. A form is a list of fields with the place each has in a command; what the
 * person typed travels as text, and only the core reads it.
 */

/** @typedef {import("../state").Command} Command */
/** @typedef {import("../state").Field} Field */
/** @typedef {import("../state").Form} Form */
/** @typedef {import("../state").Step} Step */
/** @typedef {import("../state").State} State */
/** @typedef {Readonly<Record<string, string>>} Context */
/** @typedef {{title: string, send: string, fields: Field[]}} Sheet */
/** @typedef {() => string} NewId */
/**
 * A form that can be opened: `lay` says its fields, `build` the steps it stands for.
 * @typedef {{words: string, ids?: (form: Form) => number,
 *   lay: (state: State, context: Context) => Sheet,
 *   build: (form: Form, state: State, newId: NewId) => Step[],
 *   check?: (form: Form) => Form["problem"]}} FormKind
 */

/**
 * Put a value at a dotted place of a command ("points.0.length_m").
 * @param {Record<string, any>} whole @param {string} place @param {unknown} value
 */
const putAt = (whole, place, value) => {
  const path = place.split(".");
  const last = path.pop() ?? place;
  let here = whole;
  for (const part of path) here = here[part] ??= {};
  here[last] = value;
};

/** Whether a field is there now, or only while another has some value. @param {Form} form @param {Field} field */
export const isThere = ({ values }, { when }) => !when || values[when.field] === when.is;

/**
 * Fill a command from a form: numbers go as typed text, all else as it stands.
 * @param {Command} command @param {Form} form
 * @param {(field: Field) => boolean} [wanted] which fields take part
 * @returns {Step}
 */
export const fill = (command, form, wanted = () => true) => {
  /** @type {Record<string, string>} */
  const typed = {};
  for (const field of form.fields.filter((each) => each.at && wanted(each))) {
    const text = isThere(form, field) ? (form.values[field.name] ?? "") : "";
    if (field.is === "number") {
      putAt(command, field.at, null);
      if (text.trim()) typed[field.at] = text;
    } else if (field.is === "choice") {
      const meant = field.stands_for ?? {};
      putAt(command, field.at, Object.hasOwn(meant, text) ? meant[text] : text || null);
    } else putAt(command, field.at, text.trim());
  }
  return { command, typed };
};

/**
 * Fill a command with only what the person changed.
 * @param {Command} command @param {Form} form @returns {Step[]}
 */
export const fillTouched = (command, form) => {
  const touched = form.fields.filter((field) => field.at && form.touched.includes(field.name));
  return touched.length ? [fill(command, form, (field) => touched.includes(field))] : [];
};

/** @param {string} name @param {string} at @param {string} words @param {string} value */
export const wordsField = (name, at, words, value) =>
  /** @type {Field} */ ({ name, at, is: "words", words, value });

/**
 * @param {string} name @param {string} at @param {string} words @param {string} value
 * @param {Partial<Field>} [more]
 */
export const numberField = (name, at, words, value, more = {}) =>
  /** @type {Field} */ ({ name, at, is: "number", words, value, ...more });

/**
 * @param {string} name @param {string} at @param {string} words @param {string} value
 * @param {import("../state").Choice[]} choices @param {Record<string, unknown>} [stands_for]
 */
export const choiceField = (name, at, words, value, choices, stands_for) =>
  /** @type {Field} */ ({ name, at, is: "choice", words, value, choices, stands_for });
