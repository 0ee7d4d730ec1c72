/**
 * Two tabs and one job: who holds the lock writes, everybody else reads and follows. A reader
 * may ask for the pen; the writer hands it over as soon as everything is kept. A writer that
 * does not answer, because its tab sleeps, loses it; what it still tries to write is refused.
 */

/** @typedef {{job: string, says: "changed" | "wants" | "soon"}} Note */
/** @typedef {{job: string, leave: AbortController, release: () => void, mine: boolean}} Seat */
/** @typedef {{onGranted: (job: string) => void, onDenied: (job: string) => void,
 *   onChanged: (job: string) => void, onWanted: (job: string) => boolean}} Hear */

const ANSWER_WITHIN_MILLISECONDS = 3000;
/** How a lock that another tab has stolen says so. */
const TAKEN_AWAY = "AbortError";

/** @param {string} job */
const lockName = (job) => `rungline:${new URL("./", location.href).pathname}:${job}`;

/** @param {Hear} hear */
export const makeTabs = ({ onGranted, onDenied, onChanged, onWanted }) => {
  const channel = new BroadcastChannel("rungline");
  /** @type {Seat | null} */
  let seat = null;
  /** The job somebody else waits for. @type {string | null} */
  let wish = null;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let patience;

  /** @param {Seat} mine */
  const hold = (mine) =>
    new Promise((resolve) => {
      if (mine.leave.signal.aborted) return resolve(undefined);
      clearTimeout(patience);
      mine.release = () => resolve(undefined);
      mine.mine = true;
      onGranted(mine.job);
    });

  /**
   * The pen was taken away, so it is waited for again. Any other refusal would be repeated at
   * once and for ever: a page that is being left gets no lock, nor one without storage.
   * @param {Seat} mine @param {DOMException} why
   */
  const lose = (mine, why) => {
    if (mine !== seat || mine.leave.signal.aborted) return;
    mine.mine = false;
    onDenied(mine.job);
    if (why.name === TAKEN_AWAY) wait(mine);
  };

  /** @param {Seat} mine */
  const wait = (mine) => {
    const { signal } = mine.leave;
    navigator.locks
      .request(lockName(mine.job), { signal }, () => hold(mine))
      .catch((why) => lose(mine, why));
  };

  const leave = () => {
    clearTimeout(patience);
    seat?.leave.abort();
    seat?.release();
    seat = null;
  };

  /** @param {string} job */
  const take = (job) => {
    leave();
    const mine = { job, leave: new AbortController(), release: () => {}, mine: false };
    seat = mine;
    navigator.locks
      .request(lockName(job), { ifAvailable: true }, (lock) => {
        if (lock) return hold(mine);
        onDenied(job);
        wait(mine);
      })
      .catch((why) => lose(mine, why));
  };

  /** Take the pen from a tab that does not answer. */
  const steal = () => {
    const mine = seat;
    if (!mine || mine.mine) return;
    navigator.locks
      .request(lockName(mine.job), { steal: true }, () => hold(mine))
      .catch((why) => lose(mine, why));
  };

  const giveIfWanted = () => {
    if (!wish || seat?.job !== wish || !seat.mine || !onWanted(wish)) return;
    const job = wish;
    wish = null;
    take(job);
  };

  /** @param {MessageEvent<Note>} event */
  channel.onmessage = ({ data: { job, says } }) => {
    if (says === "changed") return onChanged(job);
    if (seat?.job !== job) return;
    if (says === "soon") return clearTimeout(patience);
    if (!seat.mine) return;
    wish = job;
    channel.postMessage({ job, says: "soon" });
    giveIfWanted();
  };

  // A page that is left holds no pen; one that is shown again as it was asks anew.
  /** @type {string | null} */
  let left = null;
  addEventListener("pagehide", () => {
    left = seat?.job ?? null;
    leave();
  });
  addEventListener("pageshow", ({ persisted }) => persisted && left && take(left));

  return {
    take,

    /** @param {string} job */
    tell: (job) => channel.postMessage({ job, says: "changed" }),

    /** Ask whoever has the pen to hand it over. @param {string} job */
    want(job) {
      clearTimeout(patience);
      patience = setTimeout(steal, ANSWER_WITHIN_MILLISECONDS);
      channel.postMessage({ job, says: "wants" });
    },

    /** Hand it over once everything is kept. */
    giveIfWanted,
  };
};

/** @typedef {ReturnType<typeof makeTabs>} Tabs */
