/** The state two copies of a job grew from, found among the states still kept here. */

/** @typedef {import("../state").Job} Job */

/**
 * The states from elsewhere that mine still holds: an undone merge leaves nothing of what it took in.
 * Each own state names what it grew from; going back to an earlier name ends all that came between.
 * @param {readonly Job[]} own in the order they were made
 */
const stillIn = (own) => {
  /** @type {Array<string | undefined>} */
  const taken = [];
  for (const { base } of own) {
    const at = taken.indexOf(base?.print);
    if (at < 0) taken.push(base?.print);
    else taken.length = at + 1;
  }
  return new Set(taken);
};

/**
 * Of all states kept here, the newest that either side says it grew from, or that is the other
 * side itself. Counts of changes only grow along a line of states, so the newest is the nearest.
 * @param {import("../shapes").House} house
 * @param {Job} mine @param {Job} theirs
 * @returns {Promise<Job | null>}
 */
export const findCommon = async ({ door, keeper }, mine, theirs) => {
  const kept = await keeper.readStates(mine.id);
  const held = stillIn([...kept.filter((state) => !state.theirs).map(({ job }) => job).reverse(), mine]);
  const states = [{ job: mine, theirs: false }, ...kept];
  const { prints } = await door.ask("prints", { jobs: [theirs, ...states.map(({ job }) => job)] });
  const [their, ...ours] = prints;
  const wanted = new Set([their, theirs.base?.print]);
  // What mine took in before counts only if theirs can have come after it.
  if (mine.base && mine.base.rev <= theirs.rev) wanted.add(mine.base.print);
  const found = states.filter(
    (state, at) => wanted.has(ours[at]) && held.has(state.theirs ? ours[at] : state.job.base?.print),
  );
  return found.map(({ job }) => job).sort((one, other) => other.rev - one.rev)[0] ?? null;
};
