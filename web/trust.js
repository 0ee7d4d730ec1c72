/**
 * The only place where an address of a script is made. A page under Trusted Types takes no
 * plain text for one, so nothing else on the page can start a script.
 */

const SCRIPTS = ["./worker.js", "./sw.js"];

/** @typedef {{createScriptURL(text: string): unknown}} Policy */
/** @typedef {{createPolicy(name: string, rules: Policy): Policy}} PolicyMaker */

/** @type {Policy} */
const rules = {
  createScriptURL(text) {
    if (!SCRIPTS.includes(text)) throw new TypeError(`not a script of ours: ${text}`);
    return text;
  },
};

const maker = /** @type {{trustedTypes?: PolicyMaker}} */ (
  /** @type {unknown} */ (globalThis)
).trustedTypes;
const policy = maker ? maker.createPolicy("app", rules) : rules;

/**
 * The address of one of our two scripts, in the form this browser wants it.
 * @param {"./worker.js" | "./sw.js"} text
 * @returns {string}
 */
export const scriptAddress = (text) =>
  /** @type {string} */ (/** @type {unknown} */ (policy.createScriptURL(text)));
