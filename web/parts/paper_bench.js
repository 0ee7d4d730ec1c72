/** Under a paper: print it, or take it along for a spreadsheet. */

import { html } from "../markup.js";
import { benchButton } from "../pieces/button.js";
import { say } from "../say.js";

/** @param {import("../state").State} state */
export const paperBench = ({ meter, desk, place }) => {
  const off = meter.paper?.of !== `${desk?.id} ${place.screen}`;
  return html`<div class="bench-buttons">
    ${benchButton("file", say("paper.print"), "paper.print", {}, { chief: true, off })}
    ${benchButton("send", say("paper.csv"), "paper.csv", {}, { off })}
  </div>`;
};
