/** Whether what was asked of "what if" is of the line and of the state of the job one looks at. */

/** @param {import("./state").State} state */
export const isOfNow = ({ desk, place, line: { what_if } }) =>
  what_if.job === desk?.id && what_if.rev === desk?.job.rev && what_if.of === place.zone;
