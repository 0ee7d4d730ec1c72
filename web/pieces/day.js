/** A moment as people write it: the device knows how. */

/**
 * @param {string | null | undefined} at
 * @returns {{day: string, time: string} | null}
 */
export const dayOf = (at) => {
  const moment = at ? new Date(at) : null;
  if (!moment || Number.isNaN(moment.getTime())) return null;
  const time = moment.toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
  return { day: moment.toLocaleDateString([], { dateStyle: "medium" }), time };
};
