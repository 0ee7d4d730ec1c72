/** Where the person is, written in the fragment: it never leaves the device. */

/** @typedef {import("./state").Place} Place */

const PATTERNS = [
  { pattern: /^#\/jobs$/, screen: "jobs" },
  { pattern: /^#\/about$/, screen: "about" },
  { pattern: /^#\/job\/([\w-]+)$/, screen: "job" },
  { pattern: /^#\/job\/([\w-]+)\/limits$/, screen: "limits" },
  { pattern: /^#\/job\/([\w-]+)\/zone\/([\w-]+)$/, screen: "zone" },
];

/**
 * @param {string} hash
 * @returns {Place}
 */
export const readAddress = (hash) => {
  for (const { pattern, screen } of PATTERNS) {
    const found = pattern.exec(hash);
    if (!found) continue;
    const [, job = null, zone = null] = found;
    return { screen: /** @type {Place["screen"]} */ (screen), job, zone };
  }
  return { screen: "tally", job: null, zone: null };
};

/**
 * @param {Partial<Place> & {screen: Place["screen"]}} place
 * @returns {string}
 */
export const writeAddress = ({ screen, job, zone }) => {
  if (screen === "tally") return "#/";
  if (screen === "jobs" || screen === "about") return `#/${screen}`;
  if (screen === "limits") return `#/job/${job}/limits`;
  return screen === "zone" ? `#/job/${job}/zone/${zone}` : `#/job/${job}`;
};

/** @param {Partial<Place> & {screen: Place["screen"]}} place */
export const goTo = (place) => {
  location.hash = writeAddress(place);
};

const LAST = "rungline.address";

/** Started without an address: go where the person was last. */
export const restoreAddress = () => {
  if (location.hash) return;
  try {
    const last = localStorage.getItem(LAST);
    if (last) history.replaceState(null, "", last);
  } catch {
    // Storage is switched off here; the tally is a good place to start.
  }
};

const rememberAddress = () => {
  try {
    localStorage.setItem(LAST, location.hash);
  } catch {
    // As above: nothing is lost but the place.
  }
};

/** @param {(place: Place) => void} listen */
export const onAddress = (listen) => {
  addEventListener("hashchange", () => {
    rememberAddress();
    listen(readAddress(location.hash));
  });
  listen(readAddress(location.hash));
};
