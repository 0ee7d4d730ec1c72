/**
 * Whoever touches sees where the finger is: the ring of the focus is for those who go by keys. A
 * browser shows it, too, where the page moves the focus on from a field that was typed into.
 */

const KEYS = ["Tab", "Escape", "ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Home", "End"];

/** @param {KeyboardEvent} event */
const isPress = ({ key, target }) =>
  (key === "Enter" || key === " ") && target instanceof Element && !target.matches("input, textarea");

/** @param {HTMLElement} page the whole document, a dialog included */
export const tellTouchFromKeys = (page) => {
  page.addEventListener("pointerdown", () => page.classList.add("by-touch"), { capture: true, passive: true });
  page.addEventListener("keydown", (event) => {
    if (KEYS.includes(event.key) || isPress(event)) page.classList.remove("by-touch");
  }, { capture: true });
};
