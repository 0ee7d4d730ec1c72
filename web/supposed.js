/** What is supposed of the line on the screen, and whether an answer is about just that. */

import { kindsOf } from "./kinds.js";

/** @typedef {import("./state").State} State */
/** @typedef {import("./line_state").WhatIf} WhatIf */

/** The line, and the output it hangs on in a page. @param {State} state */
const whereOf = ({ desk, place }) => {
  const zone = place.view === "if" ? desk?.job.zones.find(({ id }) => id === place.zone) : undefined;
  const outputs = desk?.job.amplifiers.flatMap((amplifier) => amplifier.outputs) ?? [];
  const output = outputs.find(({ id }) => id === (zone?.page_output ?? zone?.output));
  return zone && output ? { zone, output } : null;
};

/** What is asked: null while something of it has not been chosen yet. @param {State} state @returns {WhatIf["asked"]} */
export const supposedIn = (state) => {
  const { is, line_v, tap, run, cable, sections } = state.line.what_if;
  const where = whereOf(state);
  if (!where) return null;
  const { zone, output } = where;
  if (is === "voltage") {
    return line_v ? { change: { is, output: output.id, line_v: Number(line_v) }, typed: {} } : null;
  }
  if (is === "cable") {
    const kind = kindsOf(state, "cables").find(({ id }) => id === cable);
    return kind ? { change: { is, zone: zone.id, sections, kind }, typed: {} } : null;
  }
  const taps = { zone: zone.id, tap_w: Number(tap), tap_at_v: output.line_v };
  if (is === "tap") return tap ? { change: { is, ...taps }, typed: {} } : null;
  return tap && run.trim() ? { change: { is, ...taps }, typed: { run } } : null;
};

/** The line of a job, and the kind of question. @param {State} state */
export const aboutOf = ({ desk, place, line }) => [desk?.id, place.zone, line.what_if.is].join(" ");

/** All an answer depends on, by one text; null where nothing is supposed. @param {State} state */
export const keyOf = (state) => {
  const { desk, engine, manner } = state;
  const asked = supposedIn(state);
  return asked && JSON.stringify([desk?.id, desk?.job.rev, engine.version, manner.length, manner.decimal, asked]);
};

/**
 * The last answer about this line; `late` while one about what is supposed now is on its way.
 * @param {State} state
 */
export const answerIn = (state) => {
  const { answer, asked, about, key } = state.line.what_if;
  const now = keyOf(state);
  return answer && now && about === aboutOf(state) ? { answer, asked, late: key !== now } : null;
};
