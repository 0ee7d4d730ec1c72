/** Under what came from elsewhere: keep it, replace, compare, or put it away. */

import { html, nothing } from "../markup.js";
import { benchButton } from "../pieces/button.js";
import { fileButton } from "../pieces/file_button.js";
import { say } from "../say.js";

/** @typedef {import("../state").Came} Came */

const entry = () => html`<div class="bench-buttons">
  ${benchButton("paste", say("open.from_clipboard"), "open.from_clipboard", {}, { chief: true })}
  ${fileButton()}
</div>`;

/** @param {Came} came */
const one = ({ here }) => html`<div class="bench-buttons">
  ${here === "new" ? benchButton("add", say("open.keep"), "open.keep", {}, { chief: true }) : nothing}
  ${here === "same" ? benchButton("job", say("open.show_mine"), "open.show_mine", {}, { chief: true }) : nothing}
  ${here === "other"
    ? html`${benchButton("compare", say("open.compare"), "open.compare", {}, { chief: true })}
        ${benchButton("file", say("open.replace"), "open.replace")}
        ${benchButton("add", say("open.keep_new"), "open.keep")}
        ${benchButton("job", say("open.show_mine"), "open.show_mine")}`
    : nothing}
  ${benchButton("close", say("open.throw_away"), "open.away")}
</div>`;

/** @param {import("../state").Arrived} arrived */
const several = ({ came }) => html`<div class="bench-buttons">
  ${benchButton("add", say("open.keep_all"), "open.keep_all", {}, {
    chief: true,
    off: !came.some(({ here }) => here === "new"),
  })}
  ${benchButton("close", say("open.throw_away"), "open.away")}
</div>`;

/** @param {import("../state").State} state */
export const openBench = ({ arrived }) => {
  if (!arrived || arrived.problem) return entry();
  if (arrived.reading) return nothing;
  const picked = arrived.picked === null ? undefined : arrived.came[arrived.picked];
  return picked ? one(picked) : several(arrived);
};
