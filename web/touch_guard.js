/**
 * What has only just opened under a finger is not touched by the second tap of a double tap, which
 * falls near the first: it counts only where its control already stood when the first fell.
 */

const SOON_MS = 500;
const NEAR_PX = 48;
const CONTROLS = "[data-act]:not(form), [data-input], [type=submit], a[href], summary, label, select";
/** What opens, grows and goes by itself; rows of a sheet stand still, but for the place just touched. */
const OPENING = ".bench, .top, dialog";

/** What a control does, to whom. @param {HTMLElement} control */
const sameOf = (control) => JSON.stringify({ ...control.dataset });

/** What a person calls it. @param {HTMLElement} control */
const nameOf = (control) => `${control.dataset.act} ${control.getAttribute("aria-label") ?? control.textContent}`;

/** @typedef {{does: string, name: string, box: DOMRect}} Stood */

/** @param {HTMLElement} control @returns {Stood} */
const stoodAs = (control) => ({ does: sameOf(control), name: nameOf(control), box: control.getBoundingClientRect() });

/** @param {EventTarget | null} target */
const controlAt = (target) =>
  target instanceof Element ? /** @type {HTMLElement | null} */ (target.closest(CONTROLS)) : null;

/** @param {HTMLElement} root */
const standing = (root) => {
  const opening = [...root.querySelectorAll(OPENING), ...(root.matches(OPENING) ? [root] : [])];
  const controls = opening.flatMap((each) => [...each.querySelectorAll(CONTROLS)]);
  return new Map(controls.map((each) => [each, stoodAs(/** @type {HTMLElement} */ (each))]));
};

/** @typedef {{at: number, x: number, y: number, control: HTMLElement | null, stood: Map<Element, Stood>}} Fall */

/** Whether it is what it was, where it was. @param {Stood | undefined} before @param {HTMLElement} control @param {MouseEvent} event */
const isAsBefore = (before, control, { clientX, clientY }) => {
  if (!before) return false;
  const { left, right, top, bottom } = before.box;
  const isHere = clientX >= left && clientX <= right && clientY >= top && clientY <= bottom;
  return isHere && (before.does === sameOf(control) || before.name === nameOf(control));
};

/** @param {Fall | null} last @param {HTMLElement | null} control @param {PointerEvent} event */
const isTooSoon = (last, control, event) => {
  if (!last || !control || event.timeStamp - last.at > SOON_MS) return false;
  if (isAsBefore(last.stood.get(control), control, event)) return false;
  return Math.hypot(event.clientX - last.x, event.clientY - last.y) <= NEAR_PX;
};

/**
 * Keys are never held up: what they press has no place and comes without a touch.
 * @param {HTMLElement} root
 */
export const guardTouches = (root) => {
  /** @type {Fall | null} */
  let last = null;
  let tooSoon = false;
  root.addEventListener("pointerdown", (event) => {
    const control = controlAt(event.target);
    tooSoon = isTooSoon(last, control, event);
    const stood = standing(root);
    if (control) stood.set(control, stoodAs(control));
    last = { at: event.timeStamp, x: event.clientX, y: event.clientY, control, stood };
  }, { capture: true, passive: true });
  for (const name of ["mousedown", "click"]) {
    root.addEventListener(name, (event) => {
      // A key that presses a control has a click of no count.
      if (!tooSoon || /** @type {MouseEvent} */ (event).detail === 0) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    }, { capture: true });
  }
};
