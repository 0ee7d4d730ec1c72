/** A zone: its line drawn from the terminals to the far end, everything in hanging order. */

import { html, nothing, repeat } from "../markup.js";
import { shareBar } from "../pieces/bar.js";
import { figure } from "../pieces/figure.js";
import { glyph } from "../pieces/glyphs.js";
import { shape, verdictShape } from "../pieces/mark.js";
import { meterWay } from "../pieces/meter_way.js";
import { sentence } from "../pieces/sentence.js";
import { say, sayOne } from "../say.js";
import { hangingOrder } from "../tree.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Desk} Desk */
/** @typedef {import("../state").Zone} Zone */
/** @typedef {import("../state").Fitted} Fitted */
/** @typedef {import("../tree.js").Row} Row */

const MOST_LEVELS = 4;

/** @param {Fitted} fitted */
const drawing = ({ is, connected }) =>
  glyph(is === "loudspeaker" && connected === false ? "loudspeaker_off" : is);

const tickedMark = () =>
  html`<span class="point-ticked">${glyph("ticked")}<span class="unseen">${say("point.ticked")}</span></span>`;

/** The run and the branches beside a row. @param {Row} row */
const rails = ({ level, ends, branches }) => {
  const shown = Math.min(level, MOST_LEVELS);
  const passing = Array.from({ length: shown }, () => html`<i class="rail"></i>`);
  return html`<span class="rails" aria-hidden="true"
    >${passing}<i class="rail own ${ends ? "ends" : ""} ${branches ? "branches" : ""}"></i
  ></span>`;
};

/** @param {Desk} desk @param {Row} row @param {boolean} picked */
const pointRow = (desk, row, picked) => {
  const { id, fitted } = row.point;
  const face = desk.seen.faces.things[id];
  const off = fitted.connected === false || fitted.off;
  const title = face?.title || sayOne("fitted", fitted.is);
  const ticked = desk.job.ticks.some(({ point }) => point === id);
  return html`<li class="point level-${Math.min(row.level, MOST_LEVELS)} ${picked ? "picked" : ""} ${off ? "off" : ""}">
    ${rails(row)}
    <button type="button" class="pick point-pick" data-act="thing.pick" data-id=${id}
      aria-expanded=${picked}>
      <span class="point-drawing">${drawing(fitted)}</span>
      <span class="point-words">
        <span class="point-head"><b>${title}${ticked ? tickedMark() : nothing}</b><span class="point-line">${face?.line}</span></span>
        <span class="point-detail quiet"><span>${face?.detail}</span><span>${face?.loss}</span></span>
      </span>
    </button>
    <span class="point-figures">
      ${figure(face?.load, face?.finding, title)}
      ${face?.verdict && face.verdict !== "note" ? verdictShape(face.verdict) : nothing}
    </span>
  </li>`;
};

/** Where nothing of the cable is known yet, the way to say it. @param {Zone} zone */
const lengthsWay = ({ id, line }) =>
  line.length && line.every(({ length_m }) => typeof length_m !== "number")
    ? html`<button type="button" class="plain-button" data-act="form.open"
        data-values=${JSON.stringify({ form: "set_lengths", zone: id })}>${say("zone.lengths")}</button>`
    : nothing;

/** @param {Desk} desk @param {Zone} zone */
const zoneHead = (desk, zone) => {
  const face = desk.seen.faces.things[zone.id];
  if (!face) return nothing;
  const verdict = face.verdict ?? "unknown";
  return html`<section class="zone-head v-${verdict}" aria-label=${face.title}>
    <p class="zone-figures">
      ${figure(face.load, face.finding, face.title)}
      ${face.share ? html`<span>${face.share}</span>` : nothing}
      <span class="quiet">${face.line}</span>
    </p>
    ${typeof face.share_fraction === "number" ? shareBar(face.share_fraction, verdict) : nothing}
    ${zone.line.length ? html`<p class="zone-verdict">${shape(verdict)}<strong>${face.verdict_words ?? sayOne("verdict", verdict)}</strong></p>` : nothing}
    ${sentence(face.reason, face.reason_finding, "verdict-reason")} ${meterWay(desk, face.reason_finding)}
    ${lengthsWay(zone)}
  </section>`;
};

/** @param {Desk} desk @param {Zone} zone */
const terminals = (desk, zone) => {
  const output = zone.output ? desk.seen.faces.things[zone.output] : null;
  return html`<li class="terminals">
    <span class="rails" aria-hidden="true"><i class="rail own starts"></i></span>
    <span>
      <b>${output?.title ?? say("choice.no_output")}</b>
      <span class="quiet">${output?.line ?? say("zone.land_it")}</span>
    </span>
  </li>`;
};

/** @param {State} state */
export const zoneSheet = (state) => {
  const { desk, place, bench } = state;
  const zone = desk?.job.zones.find(({ id }) => id === place.zone);
  if (!desk || !zone) return desk ? html`<p class="empty">${say("zone.gone")}</p>` : nothing;
  const picked = bench?.is === "thing" ? bench.id : bench?.is === "sure" ? bench.point : null;
  return html`
    ${zoneHead(desk, zone)}
    <ol class="line" aria-label=${say("zone.line")}>
      ${terminals(desk, zone)}
      ${repeat(
        hangingOrder(zone.line),
        ({ point }) => point.id,
        (row) => pointRow(desk, row, row.point.id === picked),
      )}
    </ol>
    ${zone.line.length ? nothing : html`<p class="empty quiet">${say("zone.empty")}</p>`}
  `;
};
