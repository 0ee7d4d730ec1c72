/** Where a first test stands: its steps, what was said of each, and what is left. */

/** @typedef {import("./meter_state").Run} Run */
/** @typedef {NonNullable<Run["answer"]>["zones"][number]} TestedZone */
/** @typedef {TestedZone["steps"][number]} TestStep */

/** Behind the last step of a zone: what was recorded there. */
export const END = "end";

/** The step at which it is found whether the line is dead. */
export const FOREIGN = "foreign";

/** Under which name the device keeps it. @param {string} job */
export const runOf = (job) => `test:${job}`;

/** @param {string} zone @param {string} step */
export const keyOf = (zone, step) => `${zone}:${step}`;

/** The zone that is tested now. @param {Run | null} run */
export const zoneOf = (run) => run?.answer?.zones.find(({ zone }) => zone === run.zone);

/** Its steps by code, and the end. @param {Run | null} run */
export const stepsOf = (run) => [...(zoneOf(run)?.steps ?? []).map(({ code }) => code), END];

/** The step that is on the screen. @param {Run | null} run */
export const stepOf = (run) => zoneOf(run)?.steps.find(({ code }) => code === run?.step);

/** What was said of a step. @param {Run} run @param {string} zone @param {TestStep} step */
export const saidOf = (run, zone, { code }) => run.said[keyOf(zone, code)];

/** Whether a step is recorded or confirmed. @param {Run} run @param {string} zone @param {TestStep} step */
export const isDone = (run, zone, step) => {
  return step.reading ? Boolean(step.record) && step.record?.code !== "line_changed" : saidOf(run, zone, step)?.is === "done";
};

/** The zone behind this one. @param {Run} run */
export const nextZone = (run) => {
  const zones = run.answer?.zones.filter(({ steps }) => steps.length) ?? [];
  return zones[zones.findIndex(({ zone }) => zone === run.zone) + 1];
};
