/** Findings, those of one kind together, the gravest first. Each number opens its working. */

import { html, nothing, repeat } from "../markup.js";
import { figure } from "../pieces/figure.js";
import { verdictMark } from "../pieces/mark.js";
import { say } from "../say.js";

/** @typedef {import("../state").Finding} Finding */

const GRAVITY = ["over", "unknown", "near", "ok", "note"];

/** @param {readonly Finding[]} findings @returns {Finding[][]} */
const grouped = (findings) => {
  /** @type {Map<string, Finding[]>} */
  const groups = new Map();
  for (const verdict of GRAVITY) {
    for (const finding of findings.filter((each) => each.verdict === verdict)) {
      const name = `${verdict} ${finding.code}`;
      groups.set(name, [...(groups.get(name) ?? []), finding]);
    }
  }
  return [...groups.values()];
};

/** @param {Finding} finding */
const findingLine = ({ id, title, words, remedy, shown }) => html`<li class="finding">
  <div class="finding-head"><b>${title}</b>${figure(shown.value, id, title)}</div>
  <p>${words}</p>
  ${remedy ? html`<p class="remedy">${remedy}</p>` : nothing}
</li>`;

/** @param {Finding[]} group */
const findingGroup = (group) => {
  const [first] = group;
  if (!first) return nothing;
  return html`<li class="finding-group v-${first.verdict}">
    ${verdictMark(first.verdict)}
    <ul>
      ${repeat(group, ({ id }) => id, findingLine)}
    </ul>
  </li>`;
};

/** @param {readonly Finding[]} findings */
export const findingList = (findings) => {
  if (!findings.length) return nothing;
  const groups = grouped(findings);
  return html`<section class="findings" aria-label=${say("findings.title")}>
    <h2>${say("findings.title")}</h2>
    <ul>
      ${groups.map(findingGroup)}
    </ul>
  </section>`;
};
