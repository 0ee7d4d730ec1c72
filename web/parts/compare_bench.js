/** Under two states: how many choices are open, and taking them over. */

import { html, nothing } from "../markup.js";
import { benchButton } from "../pieces/button.js";
import { say } from "../say.js";

/** @param {import("../state").Comparing} comparing */
const openWords = ({ answer, taken }) => {
  const open = answer.changes.filter(({ id, must_choose }) => must_choose && !taken[id]).length;
  if (!open) return { open, words: say("compare.settled") };
  const words = open === 1 ? say("compare.open_one") : say("compare.open_many", { count: `${open}` });
  return { open, words };
};

/** @param {import("../state").State} state */
export const compareBench = ({ comparing, place }) => {
  if (!comparing || comparing.id !== place.job) return nothing;
  const { open, words } = openWords(comparing);
  const { problem, past, answer } = comparing;
  const none = !answer.changes.length && !answer.united.length;
  return html`${problem
      ? html`<p class="field-problem" role="alert">${problem.words} ${problem.remedy ?? nothing}</p>`
      : html`<p class="quiet" role="status">${words}</p>`}
    <div class="bench-buttons compare-buttons">
      ${benchButton("take", say("compare.apply"), "compare.apply", {}, { chief: true, off: open > 0 || none })}
      ${benchButton("job", past ? say("compare.now") : say("compare.all_mine"), "compare.all_mine")}
      ${benchButton("open_file", past ? say("compare.then") : say("compare.all_theirs"), "compare.all_theirs")}
    </div>`;
};
