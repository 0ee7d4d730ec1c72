/** A link that was opened: taken out of the address, so that it is neither kept nor opened twice. */

const LINK = /^#[1-9]/;
const KEPT = "rungline.arrived";
const OPEN = "#/open";

/** Until the person has decided, a link survives a reload. @param {string | null} text */
export const rememberLink = (text) => {
  try {
    if (text === null) sessionStorage.removeItem(KEPT);
    else sessionStorage.setItem(KEPT, text);
  } catch {
    // No storage here: then a reload loses the preview, and the link opens again.
  }
};

export const recallLink = () => {
  try {
    return location.hash === OPEN ? sessionStorage.getItem(KEPT) : null;
  } catch {
    return null;
  }
};

/** Whether an address carries a job. @param {string} hash */
export const isLink = (hash) => LINK.test(hash);

/**
 * What the address brings: a link behind #, or a text that another program shared. The address
 * is cleared of it.
 */
export const takeFromAddress = () => {
  const { hash, search } = location;
  const shared = new URLSearchParams(search);
  const text = isLink(hash) ? hash : [shared.get("url"), shared.get("text")].find(Boolean);
  if (!text) return null;
  history.replaceState(null, "", `${location.pathname}${OPEN}`);
  rememberLink(text);
  return text;
};
