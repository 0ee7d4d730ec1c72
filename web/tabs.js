/**
 * Two tabs and one job: who holds the lock writes, everybody else reads and follows. A reader
 * may ask for the pen; the writer hands it over when nothing waits.
 */

/** @typedef {{job: string, says: "changed" | "wants"}} Note */
/** @typedef {{job: string, leave: AbortController, release: () => void}} Seat */
/** @typedef {{onGranted: (job: string) => void, onDenied: (job: string) => void,
 *   onChanged: (job: string) => void, onWanted: (job: string) => boolean}} Hear */

/** @param {string} job */
const lockName = (job) => `rungline:${new URL("./", location.href).pathname}:${job}`;

/** @param {Hear} hear */
export const makeTabs = ({ onGranted, onDenied, onChanged, onWanted }) => {
  const channel = new BroadcastChannel("rungline");
  /** @type {Seat | null} */
  let seat = null;

  /** @param {Seat} mine */
  const hold = (mine) =>
    new Promise((resolve) => {
      if (mine.leave.signal.aborted) return resolve(undefined);
      mine.release = () => resolve(undefined);
      onGranted(mine.job);
    });

  /** @param {Seat} mine */
  const wait = (mine) => {
    const { signal } = mine.leave;
    // Given up on purpose when the person goes to another job.
    navigator.locks.request(lockName(mine.job), { signal }, () => hold(mine)).catch(() => {});
  };

  const leave = () => {
    seat?.leave.abort();
    seat?.release();
    seat = null;
  };

  /** @param {string} job */
  const take = (job) => {
    leave();
    const mine = { job, leave: new AbortController(), release: () => {} };
    seat = mine;
    navigator.locks.request(lockName(job), { ifAvailable: true }, (lock) => {
      if (lock) return hold(mine);
      onDenied(job);
      wait(mine);
    });
  };

  /** @param {MessageEvent<Note>} event */
  channel.onmessage = ({ data: { job, says } }) => {
    if (says === "changed") onChanged(job);
    else if (seat?.job === job && onWanted(job)) take(job);
  };

  return {
    take,

    /** @param {string} job */
    tell: (job) => channel.postMessage({ job, says: "changed" }),

    /** @param {string} job */
    want: (job) => channel.postMessage({ job, says: "wants" }),
  };
};

/** @typedef {ReturnType<typeof makeTabs>} Tabs */
