/** From a touch to a named event: controls say what they mean in data-act or data-input. */

import { guardTouches } from "./touch_guard.js";

/** @typedef {import("./shapes").Actions} Actions */
/** @typedef {import("./shapes").Touch} Touch */

/** @param {HTMLElement} control @returns {Touch} */
const read = (control) => {
  const { act, input, values = "{}", ...own } = control.dataset;
  const field = /** @type {HTMLInputElement} */ (control);
  const isChoice = field.type === "radio" || field.type === "checkbox";
  return {
    data: { ...own, ...JSON.parse(values) },
    text: isChoice ? "" : (field.value ?? ""),
    checked: Boolean(field.checked),
    files: field.files ?? null,
  };
};

/** @param {Event} event @param {string} selector */
const controlOf = ({ target }, selector) =>
  target instanceof Element
    ? /** @type {HTMLElement | null} */ (target.closest(selector))
    : null;

/**
 * What stands in a number field is selected when the field is entered, so that what is typed takes
 * its place. A touch sets the caret after the focus, so it is done again then; a second touch in
 * the same field sets the caret where it falls.
 * @param {HTMLElement} root
 */
const selectOnEntry = (root) => {
  /** @type {EventTarget | null} */
  let entered = null;
  root.addEventListener("focusin", (event) => {
    const field = controlOf(event, "input[inputmode=decimal]");
    entered = field;
    if (field instanceof HTMLInputElement) field.select();
  });
  root.addEventListener("click", ({ target }) => {
    if (target instanceof HTMLInputElement && target === entered) target.select();
    entered = null;
  });
};

/**
 * @param {HTMLElement} root
 * @param {(name: string, touch: Touch) => void} act
 */
export const listenForTouches = (root, act) => {
  guardTouches(root);
  selectOnEntry(root);
  root.addEventListener("click", (event) => {
    const control = controlOf(event, "[data-act]:not(form)");
    if (control?.dataset.act) act(control.dataset.act, read(control));
  });

  root.addEventListener("submit", (event) => {
    event.preventDefault();
    const form = controlOf(event, "form[data-act]");
    if (form?.dataset.act) act(form.dataset.act, read(form));
  });

  root.addEventListener("input", (event) => {
    const control = controlOf(event, "[data-input]");
    if (!control?.dataset.input) return;
    act(control.dataset.input, read(control));
    // The same file may be chosen twice.
    const field = /** @type {HTMLInputElement} */ (control);
    if (field.type === "file") field.value = "";
  });

  root.addEventListener("keydown", (event) => {
    if (event.key === "Escape") act("bench.close", read(root));
  });
};
