/** The kinds of a job: loudspeakers, cables, attenuators; below each those that come with the tool. */

import { FAMILIES, kindFace, ownKinds, pickOf, stockKinds } from "../kinds.js";
import { html, nothing, repeat } from "../markup.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Family} Family */
/** @typedef {import("../state").Kind} Kind */

/** @param {State} state @param {Family} family @param {Kind} kind @param {boolean} own */
const kindLine = (state, family, { id, name }, own) => {
  const pick = pickOf(family, id);
  const picked = state.bench?.is === "thing" && state.bench.id === pick;
  const face = kindFace(state, family, id);
  return html`<li class="card kind-line ${picked ? "picked" : ""}">
    <button type="button" class="pick" data-act="thing.pick" data-id=${pick} aria-expanded=${picked}>
      <b>${face?.title ?? name}</b> ${face?.lines.map((line) => html`<span class="quiet">${line}</span>`)}
      ${own ? html`<span class="quiet used">${face?.used}</span>` : nothing}
    </button>
  </li>`;
};

/** @param {State} state @param {Family} family @param {Kind[]} kinds @param {boolean} own */
const list = (state, family, kinds, own) => html`<ul class="kind-list">
  ${repeat(
    kinds,
    ({ id }) => id,
    (kind) => kindLine(state, family, kind, own),
  )}
</ul>`;

/** @param {State} state @param {Family} family */
const familyPart = (state, family) => {
  const own = ownKinds(state, family);
  const stock = stockKinds(state, family);
  return html`<section class="kinds" aria-label=${sayOne("kinds", family)}>
    <h2>${sayOne("kinds", family)}</h2>
    ${own.length ? list(state, family, own, true) : html`<p class="quiet">${say("kinds.none")}</p>`}
    ${stock.length
      ? html`<details>
          <summary>${say("kinds.stock")}</summary>
          ${list(state, family, stock, false)}
        </details>`
      : nothing}
  </section>`;
};

/** @param {State} state */
export const kindsSheet = (state) =>
  state.desk ? FAMILIES.map((family) => familyPart(state, family)) : nothing;
