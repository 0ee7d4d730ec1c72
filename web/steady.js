/** What one reads stays where it is when a note comes or goes above it. */

/** @param {HTMLElement} root */
export const keepSteady = (root) => {
  /** @type {number | null} */
  let before = null;
  const watch = new ResizeObserver(() => {
    const now = root.querySelector(".top")?.clientHeight ?? 0;
    const sheet = root.querySelector(".sheet");
    // At its very top a sheet has nothing above that could hide its first line.
    if (sheet && before !== null && sheet.scrollTop > 0) sheet.scrollTop += now - before;
    before = now;
  });
  const top = root.querySelector(".top");
  if (top) watch.observe(top);
};
