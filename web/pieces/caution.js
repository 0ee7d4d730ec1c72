/** What has to be done before a hand touches the line: said where the act is. */

import { html } from "../markup.js";
import { say } from "../say.js";

export const beforeTouch = () => html`<p class="before-touch">${say("ladder.before_touch")}</p>`;
