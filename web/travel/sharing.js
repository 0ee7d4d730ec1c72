/** What the share screen shows, asked once for each state of the job. */

import { NoAnswer, Overtaken, Refused } from "../door.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Share} Share */
/** @typedef {import("../state").Job} Job */

/** The moment of now, as a job says when it was saved: to the minute. */
const thisMinute = () => `${new Date().toISOString().slice(0, 16)}Z`;

/** The job as it leaves the device. @param {Job} job @returns {Job} */
export const leaving = (job) => ({ ...job, saved_at: thisMinute() });

/** Where a link leads: this very app, wherever it is served. @param {string} text */
const addressOf = (text) => `${new URL("./", location.href).href}#${text}`;

/** @param {import("../shapes").House} house */
export const makeSharing = ({ store, door }) => {
  let asked = "";

  /** @param {string} key @param {Job} job @returns {Promise<Partial<Share>>} */
  const make = async (key, job) => {
    try {
      const { text, characters, advice } = await door.ask(
        "write_link",
        { job: leaving(job), address: addressOf("") },
        "link",
      );
      const address = addressOf(text);
      const code = await door.ask("qr", { text: address }, "link");
      return { address, length: say("share.length", { characters: `${characters}` }), advice, code };
    } catch (error) {
      if (error instanceof Overtaken) return {};
      if (error instanceof Refused) {
        const { words, remedy } = error.problem;
        return { failed: remedy ? say("edit.refused", { words, remedy }) : words };
      }
      if (!(error instanceof NoAnswer)) throw error;
      if (asked === key) asked = "";
      return { failed: say("engine.no_answer") };
    }
  };

  /** @param {State} state */
  return async ({ place, desk, engine }) => {
    if (place.screen !== "share" || !desk || desk.id !== place.job) return;
    const { id, job } = desk;
    const key = `${id} ${job.rev}`;
    if (key === asked || engine.stage !== "ready") return;
    asked = key;
    /** @type {Share} */
    const empty = { id, rev: job.rev, address: null, length: "", advice: null, code: null, failed: null };
    const share = { ...empty, ...(await make(key, job)) };
    if (key === asked) store.change({ share });
  };
};
