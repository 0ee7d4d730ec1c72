/** A control that is painted away hands the focus to what stands in its place. */

const FOCUSABLE = "button:not(:disabled), a[href], input, select, textarea, summary";
const REGIONS = ".sheet, .bench, .top, .foot";

/** @param {Element} region */
const controlsOf = (region) =>
  /** @type {HTMLElement[]} */ ([...region.querySelectorAll(FOCUSABLE)]).filter((each) => each.checkVisibility());

/** What a control does, so that it is known again when it is painted anew. @param {HTMLElement} control */
const actOf = ({ id, dataset }) => id || JSON.stringify(dataset);

/** A field would bring up the keys of a phone. @param {HTMLElement} control */
const isQuiet = (control) => !control.matches("input[type=text]:not([inputmode=none]), textarea");

/** @param {Element | null} element */
const isThere = (element) =>
  element instanceof HTMLElement && element.isConnected && !element.matches(":disabled") && element.checkVisibility();

/**
 * @param {HTMLElement} root
 * @returns {() => void} to be called after each painting
 */
export const keepFocus = (root) => {
  /** @type {{control: HTMLElement, region: Element, at: number, act: string} | null} */
  let last = null;

  root.addEventListener("focusin", ({ target }) => {
    const control = /** @type {HTMLElement} */ (target);
    const region = control.closest(REGIONS);
    last = region && control !== region
      ? { control, region, at: controlsOf(region).indexOf(control), act: actOf(control) }
      : null;
  });
  // The person went elsewhere; a control that is painted away says so too, but is gone then.
  root.addEventListener("focusout", ({ target }) => {
    queueMicrotask(() => {
      if (last?.control === target && isThere(/** @type {Element} */ (target))) last = null;
    });
  });

  return () => {
    if (!last || document.activeElement !== document.body || isThere(last.control)) return;
    const { region, at, act } = last;
    const controls = controlsOf(region).filter(isQuiet);
    const same = controls.find((each) => actOf(each) === act);
    const heir = same ?? controls[Math.min(Math.max(at, 0), controls.length - 1)];
    last = null;
    (heir ?? document.getElementById("title"))?.focus({ preventScroll: true });
  };
};
