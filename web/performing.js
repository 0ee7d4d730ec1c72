/** Doing one act of the person: which asks it takes, and which job comes of it. */

/** @typedef {import("./state").Act} Act */
/** @typedef {import("./state").Desk} Desk */
/** @typedef {import("./state").Job} Job */
/** @typedef {import("./state").JobRecord} JobRecord */
/** @typedef {import("./state").Seen} Seen */
/** @typedef {Pick<JobRecord, "undo" | "redo">} Ways */

const MOST_UNDO = 60;

/**
 * What undo and redo hold after an act, and which past states nobody can reach any more.
 * @param {Desk} desk @param {Act} act @param {string} now
 * @returns {Ways & {gone: string[]}}
 */
export const nextWays = ({ undo, redo }, act, now) => {
  if (act.back === "undo") {
    return { undo: undo.slice(0, -1), redo: [...redo, now], gone: undo.slice(-1) };
  }
  if (act.back === "redo") {
    return { undo: [...undo, now], redo: redo.slice(0, -1), gone: redo.slice(-1) };
  }
  if (act.apart) return { undo, redo, gone: [now] };
  const longer = [...undo, now];
  return {
    undo: longer.slice(-MOST_UNDO),
    redo: [],
    gone: [...redo, ...longer.slice(0, -MOST_UNDO)],
  };
};

/** @param {Pick<import("./shapes").House, "door" | "keeper">} house */
export const makePerform = ({ door, keeper }) => {
  /** @param {Desk} desk @param {Act} act */
  const stepsOf = async (desk, act) => {
    if (!act.back) return act.steps;
    const key = desk[act.back].at(-1);
    const past = key ? await keeper.readPast(key) : undefined;
    return past ? [{ command: { do: "restore", past } }] : [];
  };

  /**
   * Ask the core for each step in turn; the job of one is what the next starts from.
   * @param {Desk} desk @param {Act} act
   * @returns {Promise<{job: Job, seen: Seen} | null>}
   */
  return async (desk, act) => {
    let { job } = desk;
    let seen = null;
    if (act.merge) {
      const { theirs, base, taken } = act.merge;
      const { united: _, job: merged, ...face } = await door.ask("merge", {
        mine: job,
        theirs,
        base,
        taken,
      });
      return { job: merged, seen: face };
    }
    for (const { command, typed = {} } of await stepsOf(desk, act)) {
      ({ job, ...seen } = await door.ask("edit", { job, command, typed }));
    }
    return seen && { job, seen };
  };
};
