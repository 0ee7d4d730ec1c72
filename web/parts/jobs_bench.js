/** Under the list of jobs: new, open, demo; and what can be done with the picked one. */

import { html, nothing } from "../markup.js";
import { benchButton, squareButton } from "../pieces/button.js";
import { fileButton, pasteWay } from "../pieces/file_button.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */

/** @param {State} state */
const picked = ({ jobs, bench }) => {
  const line = bench?.is === "thing" ? jobs?.find(({ id }) => id === bench.id) : null;
  if (!line) return nothing;
  const job = { job: line.id };
  return html`<div class="bench-head">
      <h2>${line.name}</h2>
      ${squareButton("close", say("bench.close"), "bench.close")}
    </div>
    <div class="bench-buttons">
      ${benchButton("change", say("jobs.rename"), "form.open", { form: "change_job" })}
      ${benchButton("copy", say("jobs.copy"), "jobs.copy", job)}
      ${benchButton("file", say("jobs.save"), "share.save", job)}
      ${benchButton("remove", say("jobs.remove"), "jobs.ask_remove", { ...job, name: line.name })}
    </div>`;
};

/** @param {State} state */
export const jobsBench = (state) =>
  state.bench?.is === "thing"
    ? picked(state)
    : html`<div class="bench-buttons">
        ${benchButton("add", say("jobs.new"), "jobs.new", {}, { chief: true })}
        ${pasteWay()} ${fileButton()}
        ${benchButton("job", say("jobs.demo"), "open.demo")}
      </div>`;
