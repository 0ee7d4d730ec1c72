/** Where the person is, written in the fragment: it never leaves the device. */

/** @typedef {import("./state").Place} Place */

const PATTERNS = [
  { pattern: /^#\/jobs$/, screen: "jobs" },
  { pattern: /^#\/about$/, screen: "about" },
  { pattern: /^#\/wrong$/, screen: "wrong" },
  { pattern: /^#\/distance$/, screen: "distance" },
  { pattern: /^#\/job\/([\w-]+)$/, screen: "job" },
  { pattern: /^#\/open$/, screen: "open" },
  { pattern: /^#\/job\/([\w-]+)\/limits$/, screen: "limits" },
  { pattern: /^#\/job\/([\w-]+)\/kinds$/, screen: "kinds" },
  { pattern: /^#\/job\/([\w-]+)\/share$/, screen: "share" },
  { pattern: /^#\/job\/([\w-]+)\/history$/, screen: "history" },
  { pattern: /^#\/job\/([\w-]+)\/compare$/, screen: "compare" },
  { pattern: /^#\/job\/([\w-]+)\/test$/, screen: "test" },
  { pattern: /^#\/job\/([\w-]+)\/paper$/, screen: "paper" },
  { pattern: /^#\/job\/([\w-]+)\/schedule$/, screen: "schedule" },
  { pattern: /^#\/job\/([\w-]+)\/zone\/([\w-]+)(?:\/(drawing|cable|if|meter|distance))?$/, screen: "zone" },
];

/** @type {Place["screen"][]} */
const ALONE = ["jobs", "about", "open", "wrong", "distance"];
/** @type {Place["screen"][]} */
const OF_JOB = ["limits", "kinds", "share", "history", "compare", "test", "paper", "schedule"];

/**
 * @param {string} hash
 * @returns {Place}
 */
export const readAddress = (hash) => {
  for (const { pattern, screen } of PATTERNS) {
    const found = pattern.exec(hash);
    if (!found) continue;
    const [, job = null, zone = null, view = "list"] = found;
    const where = { screen: /** @type {Place["screen"]} */ (screen), job, zone };
    return { ...where, view: /** @type {Place["view"]} */ (view) };
  }
  return { screen: "tally", job: null, zone: null };
};

/**
 * @param {Partial<Place> & {screen: Place["screen"]}} place
 * @returns {string}
 */
export const writeAddress = ({ screen, job, zone, view = "list" }) => {
  if (screen === "tally") return "#/";
  if (ALONE.includes(screen)) return `#/${screen}`;
  if (OF_JOB.includes(screen)) return `#/job/${job}/${screen}`;
  if (screen !== "zone") return `#/job/${job}`;
  return view === "list" ? `#/job/${job}/zone/${zone}` : `#/job/${job}/zone/${zone}/${view}`;
};

/** Whether the page itself leads to the screen that comes, so that what it says is still about it. */
let led = false;

/** @param {Partial<Place> & {screen: Place["screen"]}} place */
export const goTo = (place) => {
  const hash = writeAddress(place);
  led = location.hash !== hash;
  location.hash = hash;
};

/** A screen that is a form ends with it: nothing else stands there. @param {Place} place */
export const leaveFormScreen = ({ screen, job }) => {
  if (screen === "limits") goTo({ screen: "job", job });
};

const LAST = "rungline.address";
const LAST_JOB = "rungline.job";

/** @param {string} name */
const recall = (name) => {
  try {
    return localStorage.getItem(name);
  } catch {
    // Storage is switched off here: nothing is lost but the place.
    return null;
  }
};

/** @param {string} name @param {string} text */
const remember = (name, text) => {
  try {
    localStorage.setItem(name, text);
  } catch {
    // As above.
  }
};

/** The job one was at last. */
export const lastJob = () => recall(LAST_JOB);

/** Started without an address: go where the person was last. */
export const restoreAddress = () => {
  const last = location.hash ? null : recall(LAST);
  if (last) history.replaceState(null, "", last);
};

const rememberAddress = () => {
  remember(LAST, location.hash);
  const { job } = readAddress(location.hash);
  if (job) remember(LAST_JOB, job);
};

/** @param {(place: Place, led: boolean) => void} listen */
export const onAddress = (listen) => {
  addEventListener("hashchange", () => {
    rememberAddress();
    listen(readAddress(location.hash), led);
    led = false;
  });
  listen(readAddress(location.hash), true);
};
