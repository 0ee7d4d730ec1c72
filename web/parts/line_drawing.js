/** The line drawn to the metre, from the terminals downward; each thing has its row beside it. */

import { answerTo } from "../asked.js";
import { html, nothing, repeat } from "../markup.js";
import { figure } from "../pieces/figure.js";
import { verdictShape } from "../pieces/mark.js";
import { wire } from "../pieces/wire.js";
import { sentence } from "../pieces/sentence.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../line_state").Drawing} Drawing */
/** @typedef {import("../line_state").DrawnPoint} DrawnPoint */

/** As many rows as one sheet of paper takes together. */
const BLOCK = 16;

/** @param {DrawnPoint} point */
const marks = ({ worst, far, costliest, home_run }) => {
  const words = [
    worst ? say("drawing.worst") : "",
    far ? say("drawing.far") : "",
    costliest ? say("drawing.costliest") : "",
    home_run ? say("drawing.home_run") : "",
  ].filter(Boolean);
  return words.map((each) => html`<span class="tag">${each}</span>`);
};

/** @param {State} state @param {DrawnPoint} point */
const pointRow = ({ desk, bench }, point) => {
  const { id, title, line, length, figure: shown, finding, tone } = point;
  const verdict = desk?.seen.faces.things[id]?.verdict ?? "note";
  const picked = (bench?.is === "thing" && bench.id === id) || (bench?.is === "swap" && bench.point === id);
  return html`<li class="drawn ${picked ? "picked" : ""}">
    <button type="button" class="pick drawn-pick" data-act="thing.pick" data-id=${id} aria-expanded=${picked}>
      <span class="drawn-words">
        <span class="drawn-head"><b>${title}</b>${marks(point)}</span>
        <span class="drawn-line quiet">${say("drawing.line", { line, length })}</span>
      </span>
    </button>
    <span class="drawn-figure tone-${tone}">
      ${verdict === "over" || verdict === "near" ? verdictShape(verdict) : nothing}
      ${figure(shown, finding, title)}
    </span>
  </li>`;
};

/** @param {State} state */
const terminals = ({ desk, place }) => {
  const zone = desk?.job.zones.find(({ id }) => id === place.zone);
  const face = zone?.output ? desk?.seen.faces.things[zone.output] : null;
  return html`<li class="drawn drawn-start">
    <span class="drawn-pick"><span class="drawn-words"><b>${face?.title ?? say("choice.no_output")}</b>
      <span class="quiet">${face?.line ?? say("zone.land_it")}</span></span></span>
  </li>`;
};

/** What stands in each row: a point, a caption, or nothing. @param {Drawing} drawing */
const byRow = ({ points, captions }) => ({
  points: new Map(points.map((point) => [point.row, point])),
  captions: new Map(captions.map(({ row, words }) => [row, words])),
});

/** @param {State} state @param {ReturnType<typeof byRow>} rows @param {number} row */
const oneRow = (state, rows, row) => {
  const point = rows.points.get(row);
  if (point) return pointRow(state, point);
  if (row === 0) return terminals(state);
  const words = rows.captions.get(row);
  return words
    ? html`<li class="drawn drawn-caption quiet"><span class="drawn-words">${words}</span></li>`
    : html`<li class="drawn" aria-hidden="true"></li>`;
};

/** @param {State} state @param {Drawing} drawing */
const legend = ({ desk, place }, { tones, to_scale, points }) => html`<div aria-label=${say("drawing.legend")} role="group">
    ${sentence(
      html`<span class="legend"
        >${tones.map(({ tone, words }) => html`<span><i class="swatch tone-${tone}"></i>${words}</span>`)}</span
      >`,
      desk?.seen.findings.find(({ what, where }) => what === "zone_loss_db" && where.zone === place.zone)?.id,
    )}
  </div>
  ${to_scale || !points.length ? nothing : html`<p class="quiet">${say("drawing.no_scale")}</p>`}`;

/** @param {State} state @param {Drawing} drawing */
const states = ({ line }, { states_differ }) =>
  states_differ
    ? html`<div class="segments" role="group" aria-label=${say("drawing.state")}>
        ${/** @type {const} */ (["override", "set"]).map(
          (each) => html`<button type="button" class="segment" data-act="drawing.state" data-state=${each}
            aria-pressed=${line.state === each}>${each === "set" ? say("state.set") : say("state.override")}</button>`,
        )}
      </div>`
    : nothing;

/** @param {State} state @param {Drawing} drawing */
const blocks = (state, drawing) => {
  const rows = byRow(drawing);
  const firsts = Array.from({ length: Math.ceil(drawing.rows / BLOCK) }, (_, at) => at * BLOCK);
  return repeat(
    firsts,
    (first) => first,
    (first) => {
      const count = Math.min(BLOCK, drawing.rows - first);
      return html`<div class="drawn-block">
        ${wire(drawing, first, count, state.line.row)}
        <ol class="drawn-rows" start=${first + 1}>
          ${Array.from({ length: count }, (_, at) => oneRow(state, rows, first + at))}
        </ol>
      </div>`;
    },
  );
};

/** @param {State} state */
export const lineDrawing = (state) => {
  const asked = answerTo(state, "drawing");
  if (!asked) {
    return html`<p class="empty quiet" role="status">${say("drawing.asked")}</p>`;
  }
  const { answer: drawing, late } = asked;
  return html`<section class="drawing ${late ? "late" : ""}" aria-labelledby="drawing-title">
    <h2 id="drawing-title" class="unseen">${say("drawing.title")}</h2>
    ${states(state, drawing)}
    ${drawing.points.length ? html`<div class="drawn-all">${blocks(state, drawing)}</div>` : html`<p class="empty quiet">${say("zone.empty")}</p>`}
    ${drawing.points.length ? legend(state, drawing) : nothing}
  </section>`;
};
