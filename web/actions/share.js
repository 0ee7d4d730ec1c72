/** What touches on the share screen do: copy, send, save; each counts as a copy elsewhere. */

import { NoAnswer, Refused } from "../door.js";
import { canSendFiles, offerFile, saveFile, sendFile } from "../files.js";
import { say } from "../say.js";
import { leaving } from "../travel/sharing.js";

/** @typedef {import("../state").Job} Job */

const NO_ANSWER = { words: say("engine.no_answer"), remedy: null };

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const shareActions = ({ store, door, keeper, copies, storage }) => {
  /** @param {string} words */
  const tell = (words, bad = false) => store.change({ notice: { words, bad } });

  /**
   * The text of a file, made by the core; the page's own copy of the job where there is none.
   * @param {Job} job
   */
  const fileOf = async (job) => {
    const plain = { text: JSON.stringify(leaving(job)), file_name: `${job.id}.json` };
    if (store.read().engine.stage === "failed") return plain;
    try {
      return await door.ask("save", { job: leaving(job) });
    } catch (error) {
      if (error instanceof Refused || error instanceof NoAnswer) return plain;
      throw error;
    }
  };

  /** @param {string} id */
  const jobOf = async (id) => {
    const { desk } = store.read();
    return desk?.id === id ? desk.job : (await keeper.readJob(id))?.job;
  };

  const allJobs = async () => {
    const records = await Promise.all(
      (await keeper.listJobs()).map(({ id }) => keeper.readJob(id)),
    );
    return records.flatMap((record) => (record ? [record.job] : []));
  };

  const shared = () => {
    const { share, desk } = store.read();
    return share && share.id === desk?.id && share.address ? { ...share, address: share.address } : null;
  };

  return {
    "share.copy": async () => {
      const now = shared();
      if (!now) return;
      try {
        await navigator.clipboard.writeText(now.address);
      } catch {
        document.querySelector(".share-link")?.scrollIntoView({ block: "nearest" });
        return tell(say("share.copy_by_hand"), true);
      }
      tell(say("share.copied"));
      return copies.mark([now]);
    },

    "share.send": async () => {
      const now = shared();
      if (!now) return;
      // The person may close the share sheet: that is an answer, not a fault.
      const sent = await navigator.share({ url: now.address }).then(() => true, () => false);
      if (sent) return copies.mark([now]);
    },

    "share.save": async ({ data: { job: id = "" } }) => {
      const job = await jobOf(id);
      if (!job) return;
      const { text, file_name } = await fileOf(job);
      if (await offerFile(text, file_name)) await copies.mark([job]);
    },

    "share.send_file": async ({ data: { job: id = "" } }) => {
      const job = await jobOf(id);
      if (!job) return;
      const { text, file_name } = await fileOf(job);
      if (!canSendFiles()) return saveFile(text, file_name);
      if (await sendFile(text, file_name)) await copies.mark([job]);
    },

    "share.save_all": async () => {
      const jobs = await allJobs();
      try {
        const { text, file_name } = await door.ask("save_all", { jobs: jobs.map(leaving) });
        if (await offerFile(text, file_name)) await copies.mark(jobs);
      } catch (error) {
        if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
        const { words, remedy } = error instanceof Refused ? error.problem : NO_ANSWER;
        tell(remedy ? say("edit.refused", { words, remedy }) : words, true);
      }
    },

    "copies.later": () => copies.later(),

    "storage.ask": () => storage.ask(),
  };
};
