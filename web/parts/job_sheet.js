/** A job as it hangs together: amplifiers, their outputs, the zones on each. */

import { html, nothing, repeat } from "../markup.js";
import { shareBar } from "../pieces/bar.js";
import { figure } from "../pieces/figure.js";
import { glyph } from "../pieces/glyphs.js";
import { jobWays } from "../pieces/job_ways.js";
import { verdictMark, verdictShape } from "../pieces/mark.js";
import { say } from "../say.js";

/** @typedef {import("../state").Desk} Desk */
/** @typedef {import("../state").Face} Face */
/** @typedef {import("../state").Zone} Zone */
/** @typedef {import("../state").Amplifier} Amplifier */
/** @typedef {import("../state").State} State */

/** @param {State} state */
const pickedOf = ({ bench }) => (bench?.is === "thing" ? bench.id : null);

/** @param {string} id @param {Face} face @param {boolean} picked */
const pickName = (id, { title, line }, picked) => html`<button
  type="button" class="pick" data-act="thing.pick" data-id=${id} aria-expanded=${picked}
>
  <b>${title}</b><span class="quiet">${line}</span>
</button>`;

/**
 * The bar is of watts alone: what a cable or a meter says of this place stands in its mark.
 * @param {Desk} desk @param {Face} face
 */
const wattsVerdict = ({ seen: { findings } }, face) =>
  findings.find(({ id }) => id === face.finding)?.verdict ?? face.verdict;

/** The load of a thing against what it may carry. @param {Desk} desk @param {Face} face */
const loadOf = (desk, face) =>
  face.load
    ? html`<div class="load">
        <p class="load-figures">
          ${figure(face.load, face.finding, face.title)}
          ${face.limit
            ? html`<span class="quiet">${say("load.of", { limit: face.limit })}</span>
                <span class="load-share">${figure(face.share, face.share_finding, say("load.share_of", { title: face.title }))}</span>
                <span class="load-left"
                  >${figure(
                    say(face.left_by ? `load.left_${face.left_by}` : "load.left", { left: face.left ?? "" }),
                    face.left_finding,
                    face.title,
                  )}</span
                >`
            : nothing}
        </p>
        ${shareBar(face.share_fraction, wattsVerdict(desk, face))}
      </div>`
    : nothing;

/** @param {Zone} zone */
const loudspeakersOn = ({ line }) => {
  const { length } = line.filter(({ fitted }) => fitted.is === "loudspeaker");
  return say(length === 1 ? "zone.loudspeaker" : "zone.loudspeakers", { count: String(length) });
};

/** @param {Desk} desk @param {Zone} zone */
const zoneLine = (desk, zone) => {
  const face = desk.seen.faces.things[zone.id];
  if (!face) return nothing;
  return html`<li class="wired">
    <div class="card-way zone-way">
      <a class="zone-link zone-words" href="#/job/${desk.id}/zone/${zone.id}"
        ><b>${face.title}</b><span class="quiet">${loudspeakersOn(zone)}</span></a
      >
      ${figure(face.load, face.finding, face.title)}
      ${face.verdict ? verdictShape(face.verdict) : nothing} ${glyph("on")}
    </div>
  </li>`;
};

/** @param {Desk} desk @param {readonly Zone[]} zones */
const zoneList = (desk, zones) =>
  zones.length
    ? html`<ul class="wires">
        ${repeat(
          zones,
          ({ id }) => id,
          (zone) => zoneLine(desk, zone),
        )}
      </ul>`
    : nothing;

/** @param {State} state @param {Desk} desk @param {import("../state").Output} output */
const output = (state, desk, { id, name }) => {
  const face = desk.seen.faces.things[id];
  if (!face) return nothing;
  const picked = pickedOf(state) === id;
  return html`<li class="wired output ${picked ? "picked" : ""}">
    <div class="output-head">
      ${pickName(id, { ...face, title: name || face.title }, picked)} ${face.verdict ? verdictMark(face.verdict, face.verdict_words) : nothing}
    </div>
    ${loadOf(desk, face)}
    ${zoneList(
      desk,
      desk.job.zones.filter((zone) => zone.output === id),
    )}
  </li>`;
};

/** @param {State} state @param {Desk} desk @param {Amplifier} amplifier */
const amplifierCard = (state, desk, { id, outputs }) => {
  const face = desk.seen.faces.things[id];
  if (!face) return nothing;
  const picked = pickedOf(state) === id;
  return html`<section class="amplifier ${picked ? "picked" : ""}" aria-label=${face.title}>
    <div class="amplifier-head">
      ${pickName(id, face, picked)} ${face.verdict ? verdictShape(face.verdict) : nothing}
    </div>
    ${loadOf(desk, face)}
    <ul class="wires">
      ${repeat(
        outputs,
        (each) => each.id,
        (each) => output(state, desk, each),
      )}
    </ul>
  </section>`;
};

/** @param {State} state */
export const jobSheet = (state) => {
  const { desk } = state;
  if (!desk) return nothing;
  const { amplifiers, zones } = desk.job;
  const landed = new Set(amplifiers.flatMap(({ outputs }) => outputs.map(({ id }) => id)));
  const loose = zones.filter(({ output: id }) => !id || !landed.has(id));
  return html`
    ${amplifiers.length || zones.length ? nothing : html`<p class="empty">${say("job.empty")}</p>`}
    ${repeat(
      amplifiers,
      ({ id }) => id,
      (amplifier) => amplifierCard(state, desk, amplifier),
    )}
    ${loose.length
      ? html`<section class="amplifier loose" aria-label=${say("job.loose")}>
          <h2>${say("job.loose")}</h2>
          ${zoneList(desk, loose)}
        </section>`
      : nothing}
    ${jobWays(desk.id)}
  `;
};
