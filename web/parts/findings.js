/** Findings, those of one kind together, the gravest first. Each number opens its working. */

import { html, nothing, repeat } from "../markup.js";
import { figure } from "../pieces/figure.js";
import { glyph } from "../pieces/glyphs.js";
import { verdictMark } from "../pieces/mark.js";
import { meterWay } from "../pieces/meter_way.js";
import { withRemedy } from "../pieces/sentence.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").Finding} Finding */
/** @typedef {import("../state").State} State */

const GRAVITY = ["over", "unknown", "near", "ok", "note"];
// What is in order, or only good to know, is folded away.
const FOLDED = ["ok", "note"];

/** @param {readonly Finding[]} findings @returns {Finding[][]} */
const grouped = (findings) => {
  /** @type {Map<string, Finding[]>} */
  const groups = new Map();
  for (const verdict of GRAVITY) {
    for (const finding of findings.filter((each) => each.verdict === verdict)) {
      const name = `${verdict} ${finding.what}`;
      groups.set(name, [...(groups.get(name) ?? []), finding]);
    }
  }
  return [...groups.values()];
};

/**
 * The thing a finding is about, unless one is there already.
 * @param {State} state @param {Finding} finding
 */
const wayTo = ({ desk, place }, { where }) => {
  const { point, zone, output, amplifier } = where;
  const id = point ?? (zone === place.zone ? null : zone) ?? output ?? amplifier;
  const title = id && desk?.seen.faces.things[id]?.title;
  return title
    ? html`<button type="button" class="plain-button finding-way" data-act="finding.go" data-id=${id}
        aria-label=${say("findings.go", { title })}><span>${title}</span>${glyph("on")}</button>`
    : nothing;
};

/** @param {State} state @param {Finding} finding */
const findingLine = (state, finding) => {
  const { id, title, words, remedy, shown } = finding;
  return html`<li class="finding">
    <div class="finding-head">
      <b>${title}</b>
      ${finding.state === "set" ? html`<span class="quiet">${say("findings.as_set")}</span>` : nothing}
      ${figure(shown.value, id, title)}
    </div>
    ${withRemedy(words, remedy, id)}
    <div class="finding-do">${meterWay(state.desk, id)} ${wayTo(state, finding)}</div>
  </li>`;
};

/** @param {State} state @param {Finding[]} group */
const findingGroup = (state, group) => {
  const [first] = group;
  if (!first) return nothing;
  const { verdict, verdict_words, what } = first;
  return html`<details class="finding-group v-${verdict}" ?open=${!FOLDED.includes(verdict)}>
    <summary>
      <span class="finding-what">${sayOne("what", what)}</span>
      <span class="quiet">${group.length}</span>
      ${verdictMark(verdict, verdict_words)}
    </summary>
    <ul>
      ${repeat(group, ({ id }) => id, (finding) => findingLine(state, finding))}
    </ul>
  </details>`;
};

/** @param {State} state @param {readonly Finding[]} findings */
export const findingList = (state, findings) =>
  findings.length
    ? html`<section class="findings" id="findings" aria-labelledby="findings-title">
        <h2 id="findings-title" tabindex="-1">${say("findings.title")}</h2>
        ${grouped(findings).map((group) => findingGroup(state, group))}
      </section>`
    : nothing;
