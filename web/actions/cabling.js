/** What touches on the drawing, on the choice of cable and on what-if do. */

import { answerTo } from "../asked.js";
import { NoAnswer, Overtaken, Refused } from "../door.js";
import { kindsOf } from "../kinds.js";
import { isOfNow } from "../if_now.js";
import { NOT_SUPPOSED, keptOf } from "../line_first.js";
import { say } from "../say.js";

/** @typedef {import("../line_state").LineState} LineState */
/** @typedef {import("../line_state").WhatIf} WhatIf */
/** @typedef {import("../state").Command} Command */

const makeKey = () => crypto.getRandomValues(new Uint32Array(2)).join("-");

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const cablingActions = ({ store, door, edits, keeper }) => {
  /** @param {Partial<LineState>} part */
  const set = (part) => store.change({ line: { ...store.read().line, ...part } });

  /** @param {Partial<WhatIf>} part */
  const suppose = (part) => set({ what_if: { ...store.read().line.what_if, ...part } });

  /** What is asked: null while something of it has not been chosen yet. @returns {WhatIf["asked"]} */
  const changeOf = () => {
    const { desk, place, line } = store.read();
    const { is, line_v, tap, run, cable, sections } = line.what_if;
    const zone = desk?.job.zones.find(({ id }) => id === place.zone);
    const outputs = desk?.job.amplifiers.flatMap((amplifier) => amplifier.outputs) ?? [];
    const output = outputs.find(({ id }) => id === (zone?.page_output ?? zone?.output));
    if (!zone || !output) return null;
    if (is === "voltage") {
      return line_v ? { change: { is, output: output.id, line_v: Number(line_v) }, typed: {} } : null;
    }
    if (is === "cable") {
      const kind = kindsOf(store.read(), "cables").find(({ id }) => id === cable);
      return kind ? { change: { is, zone: zone.id, sections, kind }, typed: {} } : null;
    }
    const taps = { zone: zone.id, tap_w: Number(tap), tap_at_v: output.line_v };
    if (is === "tap") return tap ? { change: { is, ...taps }, typed: {} } : null;
    return tap && run.trim() ? { change: { is, ...taps }, typed: { run } } : null;
  };

  const ask = async () => {
    const wanted = changeOf();
    const { desk, place } = store.read();
    if (!wanted || !desk) return suppose({ answer: null, problem: null });
    try {
      const answer = await door.ask("what_if", { job: desk.job, ...wanted }, "what_if");
      suppose({ answer, asked: wanted, job: desk.id, rev: desk.job.rev, of: place.zone ?? "", problem: null });
    } catch (error) {
      if (error instanceof Overtaken) return;
      if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
      const words = error instanceof Refused ? error.problem.words : say("engine.no_answer");
      const remedy = error instanceof Refused ? error.problem.remedy : null;
      suppose({ answer: null, problem: { words, remedy } });
    }
  };

  /**
   * The command with ids of its own, where it adds something.
   * @param {Command & Record<string, any>} command @returns {Promise<Command>}
   */
  const withIds = async (command) => {
    if (command.ids !== null) return command;
    const { count } = command.run;
    const { hand, first } = await keeper.takeNumbers(count);
    return { ...command, ids: { hand, next: first, count } };
  };

  /** What is shown becomes the job's, as one act. */
  const doIt = async () => {
    const { answer } = store.read().line.what_if;
    if (!answer?.command || !isOfNow(store.read())) return;
    suppose(NOT_SUPPOSED);
    const command = await withIds(/** @type {Command} */ (answer.command));
    const told = say("if.done", { title: answer.title });
    return edits.send({ key: makeKey(), words: `do.${command.do}`, steps: [{ command }], told });
  };

  /** @param {Partial<WhatIf>} part */
  const alter = (part) => {
    suppose({ ...part, problem: null });
    return ask();
  };

  return {
    "drawing.state": ({ data: { state } }) => set({ state: state === "set" ? "set" : "override" }),

    "cable.stock": ({ data: { stock } }) => {
      set({ stock: /** @type {LineState["stock"]} */ (stock) });
      return keeper.keep("line", keptOf(store.read().line));
    },

    "cable.use": ({ data: { list, at } }) => {
      const choice = answerTo(store.read(), "cabling")?.answer.choice;
      const picks = list === "step_ups" ? choice?.step_ups : choice?.picks;
      const command = picks?.[Number(at)]?.command;
      if (!command) return;
      const steps = [{ command: /** @type {Command} */ (command) }];
      return edits.send({ key: makeKey(), words: "do.set_cable", steps });
    },

    "if.is": ({ data: { is } }) => alter({ is: /** @type {WhatIf["is"]} */ (is), answer: null }),
    "if.volts": ({ data: { value = "" } }) => alter({ line_v: value }),
    "if.cable": ({ text }) => alter({ cable: text }),
    "if.sections": ({ data: { value } }) =>
      alter({ sections: value === "home_run" ? "home_run" : "all" }),
    "if.do": doIt,
    "if.tap": ({ data: { value = "" } }) => alter({ tap: value }),
    "if.run": ({ text }) => alter({ run: text }),
    "if.ask": ask,
    "if.times": () => {
      suppose({ run: `${store.read().line.what_if.run.trim()} × ` });
      document.getElementById("if-run")?.focus();
    },
  };
};
