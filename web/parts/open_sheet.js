/** What came from elsewhere, before anything of it is taken in. */

import { html, live, nothing, repeat } from "../markup.js";
import { dayOf } from "../pieces/day.js";
import { glyph } from "../pieces/glyphs.js";
import { verdictMark } from "../pieces/mark.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Arrived} Arrived */
/** @typedef {import("../state").Came} Came */

const MOST_DIFFERENCES = 6;

/** @param {State} state */
const entry = ({ pasted }) => html`<form class="paste" data-act="open.look">
  <p>${say("open.how")}</p>
  <div class="field">
    <label for="pasted">${say("open.paste_label")}</label>
    <textarea id="pasted" rows="4" autocomplete="off" autocapitalize="off" spellcheck="false"
      .value=${live(pasted)} data-input="open.type"></textarea>
  </div>
  <button type="submit" class="chief-button" ?disabled=${!pasted.trim()}>${say("open.look")}</button>
</form>`;

/** @param {Arrived} arrived */
const refused = ({ problem }) =>
  problem
    ? html`<section class="card" aria-labelledby="refused-title">
        <h2 id="refused-title">${say("open.refused")}</h2>
        <p class="open-problem" role="alert">${problem.words}</p>
        ${problem.remedy ? html`<p>${problem.remedy}</p>` : nothing}
      </section>`
    : nothing;

/** @param {Came} came */
const differences = ({ comparison }) => {
  if (!comparison) return nothing;
  const { changes, words, united } = comparison;
  const more = changes.length - MOST_DIFFERENCES;
  return html`<section class="card" aria-labelledby="differs-title">
    <h2 id="differs-title">${say("open.differs")}</h2>
    <p>${words}</p>
    <ul class="differences">
      ${changes.slice(0, MOST_DIFFERENCES).map(
        (change) => html`<li><b>${change.title || change.what}</b><span>${change.words}</span></li>`,
      )}
      ${more > 0 ? html`<li class="quiet">${say("open.more_differ", { count: `${more}` })}</li>` : nothing}
      ${united.map((line) => html`<li>${line}</li>`)}
    </ul>
  </section>`;
};

/** @param {Came} came */
const when = ({ job, made_by }) => {
  const saved = dayOf(job.saved_at);
  return [
    saved ? say("open.saved_at", saved) : say("open.saved_never"),
    say("open.changes", { count: `${job.rev}` }),
    ...(made_by ? [say("open.made_by", { version: made_by })] : []),
  ].join(" · ");
};

/** An installed app on such a device keeps its own jobs. @param {Arrived} arrived */
const installed = ({ from }) =>
  from === "link" && /** @type {{standalone?: boolean}} */ (navigator).standalone === false
    ? html`<section class="card">
        <p>${say("open.installed")}</p>
        <button type="button" class="plain-button" data-act="open.copy_link">${say("share.copy")}</button>
      </section>`
    : nothing;

/** @param {Arrived} arrived @param {Came} came */
const preview = (arrived, came) => {
  const { job, seen, here } = came;
  return html`<section class="card open-preview" aria-labelledby="came-title">
      <p class="quiet">${sayOne("open", `from_${arrived.from}`)}</p>
      <h2 id="came-title">${job.name || say("open.no_name")}</h2>
      ${job.place ? html`<p>${job.place}</p>` : nothing}
      ${seen
        ? html`<p class="open-verdict">${verdictMark(seen.faces.job.verdict, seen.faces.job.headline)}</p>
            <p>${seen.faces.job.reason}</p>
            <p><b>${seen.faces.job.counts}</b></p>`
        : nothing}
      <p class="quiet">${when(came)}</p>
      <p class="open-standing" role="status">${sayOne("open", here)}</p>
    </section>
    ${differences(came)} ${installed(arrived)}`;
};

/** @param {Arrived} arrived */
const several = ({ came, refused: bad }) => html`<section class="card">
    <h2>${say("open.several", { count: `${came.length}` })}</h2>
    ${bad.map(
      ({ name, words }) =>
        html`<p class="open-problem">${say("open.not_read", { name: name || say("open.no_name"), words })}</p>`,
    )}
  </section>
  <ul class="cards">
    ${repeat(
      came,
      (_, at) => at,
      ({ job, here }, at) => html`<li class="card">
        <button type="button" class="card-way open-one" data-act="open.pick" data-at=${at}>
          <b>${job.name}</b><span class="quiet">${sayOne("open", `state_${here}`)}</span> ${glyph("on")}
        </button>
      </li>`,
    )}
  </ul>`;

/** @param {State} state */
export const openSheet = (state) => {
  const { arrived } = state;
  if (!arrived) return entry(state);
  if (arrived.reading) return html`<p class="empty" role="status">${say("open.reading")}</p>`;
  if (arrived.problem) return html`${refused(arrived)} ${entry(state)}`;
  const one = arrived.picked === null ? undefined : arrived.came[arrived.picked];
  return one ? preview(arrived, one) : several(arrived);
};
