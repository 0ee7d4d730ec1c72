/** Findings, those of one kind together, the gravest first. Each number opens its working. */

import { html, nothing, repeat } from "../markup.js";
import { figure } from "../pieces/figure.js";
import { verdictMark } from "../pieces/mark.js";
import { withRemedy } from "../pieces/sentence.js";
import { say, sayOne } from "../say.js";

/** @typedef {import("../state").Finding} Finding */

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

/** @param {Finding} finding */
const findingLine = ({ id, title, words, remedy, shown, state }) => html`<li class="finding">
  <div class="finding-head">
    <b>${title}</b>
    ${state === "set" ? html`<span class="quiet">${say("findings.as_set")}</span>` : nothing}
    ${figure(shown.value, id, title)}
  </div>
  ${withRemedy(words, remedy, id)}
</li>`;

/** @param {Finding[]} group */
const findingGroup = (group) => {
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
      ${repeat(group, ({ id }) => id, findingLine)}
    </ul>
  </details>`;
};

/** @param {readonly Finding[]} findings */
export const findingList = (findings) =>
  findings.length
    ? html`<section class="findings" id="findings" aria-labelledby="findings-title">
        <h2 id="findings-title" tabindex="-1">${say("findings.title")}</h2>
        ${grouped(findings).map(findingGroup)}
      </section>`
    : nothing;
