/** The state two copies of a job grew from, found among the states still kept here. */

/** @typedef {import("../state").Job} Job */

/**
 * Of all states kept here, the newest that either side says it grew from, or that is the other
 * side itself. Counts of changes only grow along a line of states, so the newest is the nearest.
 * @param {import("../shapes").House} house
 * @param {Job} mine @param {Job} theirs
 * @returns {Promise<Job | null>}
 */
export const findCommon = async ({ door, keeper }, mine, theirs) => {
  const kept = (await keeper.readStates(mine.id)).map(({ job }) => job);
  const states = [mine, ...kept];
  const { prints } = await door.ask("prints", { jobs: [theirs, ...states] });
  const [their, ...ours] = prints;
  const wanted = new Set([their, theirs.base?.print]);
  // What mine took in before counts only if theirs can have come after it.
  if (mine.base && mine.base.rev <= theirs.rev) wanted.add(mine.base.print);
  const found = states.filter((_, at) => wanted.has(ours[at]));
  return found.sort((one, other) => other.rev - one.rev)[0] ?? null;
};
