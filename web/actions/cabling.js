/** What touches on the drawing, on the choice of cable and on what-if do. */

import { answerTo } from "../asked.js";
import { NOT_SUPPOSED, keptOf } from "../line_first.js";
import { say } from "../say.js";
import { answerIn } from "../supposed.js";

/** @typedef {import("../line_state").LineState} LineState */
/** @typedef {import("../line_state").WhatIf} WhatIf */
/** @typedef {import("../state").Command} Command */

const makeKey = () => crypto.getRandomValues(new Uint32Array(2)).join("-");

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const cablingActions = ({ store, edits, keeper }) => {
  /** @param {Partial<LineState>} part */
  const set = (part) => store.change({ line: { ...store.read().line, ...part } });

  /** @param {Partial<WhatIf>} part */
  const suppose = (part) => set({ what_if: { ...store.read().line.what_if, ...part } });

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
    const shown = answerIn(store.read());
    if (!shown?.answer.command || shown.late) return;
    const { answer } = shown;
    suppose(NOT_SUPPOSED);
    const command = await withIds(/** @type {Command} */ (answer.command));
    const told = say("if.done", { title: answer.title });
    return edits.send({ key: makeKey(), words: `do.${command.do}`, steps: [{ command }], told });
  };

  /** @param {Partial<WhatIf>} part */
  const alter = (part) => suppose({ ...part, problem: null });

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

    "if.is": ({ data: { is } }) => alter({ is: /** @type {WhatIf["is"]} */ (is) }),
    "if.volts": ({ data: { value = "" } }) => alter({ line_v: value }),
    "if.cable": ({ text }) => alter({ cable: text }),
    "if.sections": ({ data: { value } }) =>
      alter({ sections: value === "home_run" ? "home_run" : "all" }),
    "if.do": doIt,
    "if.tap": ({ data: { value = "" } }) => alter({ tap: value }),
    "if.run": ({ text }) => alter({ run: text }),
    // What is typed was asked as it was typed: the key that sends it has nothing left to do.
    "if.ask": () => {},
    "if.times": () => {
      suppose({ run: `${store.read().line.what_if.run.trim()} × ` });
      document.getElementById("if-run")?.focus();
    },
  };
};
