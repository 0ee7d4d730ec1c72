/** Under a job: add, undo, limits; and what can be done with the picked amplifier or output. */

import { html, nothing } from "../markup.js";
import { benchButton, squareButton } from "../pieces/button.js";
import { glyph } from "../pieces/glyphs.js";
import { reasonAt } from "../pieces/reason.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Amplifier} Amplifier */
/** @typedef {import("../state").Desk} Desk */

/** @param {Desk} desk */
const undoButtons = ({ undo, redo, waiting }) => html`
  ${benchButton("undo", say("do.undo"), "edit.undo", {}, { off: !undo.length || waiting.length > 0 })}
  ${benchButton("redo", say("do.redo"), "edit.redo", {}, { off: !redo.length || waiting.length > 0 })}
`;

/** @param {string} title */
const head = (title) => html`<div class="bench-head">
  <h2>${title}</h2>
  ${squareButton("close", say("bench.close"), "bench.close")}
</div>`;

/** @param {Amplifier} amplifier */
const pools = ({ id, pools: now, outputs }) => {
  if (outputs.length < 2) return nothing;
  const said = now === null || now === undefined ? "pools.unknown" : now.length ? "pools.some" : "pools.none";
  const pooled = new Set((now ?? []).flatMap((each) => each.outputs));
  const free = outputs.filter((each) => !pooled.has(each.id));
  return html`<p class="quiet">${say(said)}</p>
    <div class="bench-row">
      ${(now ?? []).map(
        (_, at) => html`<button type="button" class="plain-button" data-act="form.open"
          data-form="pool" data-thing=${id} data-at=${at}>${say("pools.change", { number: String(at + 1) })}</button>
          <button type="button" class="plain-button" data-act="pool.remove" data-id=${id} data-at=${at}>
            ${say("pools.remove", { number: String(at + 1) })}</button>`,
      )}
      ${free.length
        ? html`<button type="button" class="plain-button" data-act="form.open" data-form="pool"
            data-thing=${id} data-at=${now?.length ?? 0}>${say("pools.add")}</button>`
        : nothing}
      ${now?.length === 0
        ? html`<button type="button" class="plain-button" data-act="pool.unknown" data-id=${id}>${say("pools.not_known")}</button>`
        : nothing}
      ${now ? nothing : html`<button type="button" class="plain-button" data-act="pool.none" data-id=${id}>${say("pools.share_nothing")}</button>`}
    </div>`;
};

/** @param {Desk} desk @param {Amplifier} amplifier */
const amplifierBench = (desk, amplifier) => {
  const { id } = amplifier;
  const at = desk.job.amplifiers.indexOf(amplifier);
  return html`${head(amplifier.name)} ${reasonAt(desk, id)}
    <div class="bench-buttons">
      ${benchButton("add", say("form.add_output"), "form.open", { form: "add_output", thing: id })}
      ${benchButton("change", say("form.rename"), "form.open", { form: "change_amplifier", thing: id })}
      ${benchButton("up", say("move.up"), "amplifier.move", { id, way: "up" }, { off: at === 0 })}
      ${benchButton("down", say("move.down"), "amplifier.move", { id, way: "down" }, { off: at === desk.job.amplifiers.length - 1 })}
      ${benchButton("remove", say("form.remove"), "amplifier.remove", { id })}
    </div>
    ${pools(amplifier)}`;
};

/** @param {Desk} desk @param {Amplifier} amplifier @param {string} id */
const outputBench = (desk, amplifier, id) => {
  const at = amplifier.outputs.findIndex((each) => each.id === id);
  const output = amplifier.outputs[at];
  return html`${head(say("choice.output", { amplifier: amplifier.name, output: output?.name ?? "" }))}
    ${reasonAt(desk, id)}
    <div class="bench-buttons">
      ${benchButton("add", say("form.add_zone"), "form.open", { form: "add_zone", output: id })}
      ${benchButton("change", say("form.change"), "form.open", { form: "change_output", thing: id })}
      ${benchButton("up", say("move.up"), "output.move", { id, way: "up" }, { off: at === 0 })}
      ${benchButton("down", say("move.down"), "output.move", { id, way: "down" }, { off: at === amplifier.outputs.length - 1 })}
      ${benchButton("remove", say("form.remove"), "output.remove", { id })}
    </div>`;
};

/** @param {Desk} desk */
const plainBench = (desk) => html`<div class="bench-buttons five">
  ${benchButton("add", say("form.add_amplifier"), "form.open", { form: "add_amplifier" })}
  ${benchButton("add", say("form.add_zone"), "form.open", { form: "add_zone" })}
  ${undoButtons(desk)}
  <a class="bench-button" href="#/job/${desk.id}/share">
    ${glyph("send")}<span>${say("title.share")}</span>
  </a>
</div>`;

/** @param {State} state */
export const jobBench = ({ desk, bench }) => {
  if (!desk) return nothing;
  const id = bench?.is === "thing" ? bench.id : null;
  const { amplifiers } = desk.job;
  const amplifier = amplifiers.find((each) => each.id === id);
  if (amplifier) return amplifierBench(desk, amplifier);
  const home = amplifiers.find(({ outputs }) => outputs.some((each) => each.id === id));
  return home && id ? outputBench(desk, home, id) : plainBench(desk);
};
