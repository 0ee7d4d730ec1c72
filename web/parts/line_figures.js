/** What a line comes to: its worst loss against the limit, and the other figures of its cable. */

import { html, nothing } from "../markup.js";
import { figure } from "../pieces/figure.js";
import { verdictMark } from "../pieces/mark.js";
import { sentence, withRemedy } from "../pieces/sentence.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Finding} Finding */

const OTHERS = [
  "zone_impedance_ohm",
  "zone_loss_10k_db",
  "zone_quietest_db",
  "zone_spread_db",
  "zone_loss_nearest_db",
  "zone_wasteful_section",
];

/** @param {State} state */
const findingsOf = ({ desk, place }) =>
  (desk?.seen.findings ?? []).filter(({ where }) => where.zone === place.zone);

/** The worst loss, large, with its limit and verdict. @param {State} state */
export const lineHead = (state) => {
  const worst = findingsOf(state).find(({ what }) => what === "zone_loss_db");
  if (!worst) return html`<p class="line-none quiet">${say("line.no_loss")}</p>`;
  const { id, title, shown, verdict, words, remedy } = worst;
  return html`<section class="line-head v-${verdict}" aria-labelledby="line-head-title">
    <h2 id="line-head-title" class="unseen">${title}</h2>
    <p class="line-worst">
      ${figure(shown.value, id, title)}
      <span class="quiet">${shown.limit ? say("load.of", { limit: shown.limit }) : nothing}</span>
      ${verdictMark(verdict, sayOne("loss_verdict", verdict))}
    </p>
    ${withRemedy(words, remedy, id, "remedy quiet")}
  </section>`;
};

/** @param {Finding} finding */
const otherFigure = ({ id, what, title, shown, words, state }) => html`<div class="line-figure">
  <dt>
    ${sayOne("figure", what)}
    ${state === "set" ? html`<span class="quiet">${say("findings.as_set")}</span>` : nothing}
  </dt>
  <dd>${figure(shown.value, id, title)}</dd>
  <dd class="quiet">${sentence(words, id)}</dd>
</div>`;

/** As it is set is told only where it differs. @param {readonly Finding[]} found */
const withoutEchoes = (found) =>
  found.filter(
    (finding) =>
      finding.state !== "set" ||
      !found.some(
        (other) =>
          other.state !== "set" &&
          other.what === finding.what &&
          other.shown.value === finding.shown.value,
      ),
  );

/** @param {State} state */
export const lineFigures = (state) => {
  const found = withoutEchoes(findingsOf(state));
  const others = OTHERS.flatMap((what) => found.filter((finding) => finding.what === what));
  const { drawing } = state.line;
  if (!others.length) return nothing;
  const limit = drawing?.of === state.place.zone ? drawing?.answer.limit : null;
  return html`<section class="line-figures" aria-labelledby="line-figures-title">
    <h2 id="line-figures-title">${say("line.figures")}</h2>
    <dl>${others.map(otherFigure)}</dl>
    ${limit
      ? html`<h3>${say("line.limit")}</h3>
          <p class="line-limit">${limit}</p>`
      : nothing}
  </section>`;
};
