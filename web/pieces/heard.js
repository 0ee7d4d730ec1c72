/** How each loudspeaker plays: choose how below, then touch one after the other. */

import { html, live, nothing, repeat, svg } from "../markup.js";
import { heardOf, lineOf, loudspeakersOf, titleOf } from "../meter_first.js";
import { say, sayOne } from "../say.js";
import { verdictMark } from "./mark.js";

/** @typedef {import("../state").State} State */

export const HEARD = /** @type {const} */ (["well", "weak", "silent", "loud", "distorted"]);

/** Each way as a shape, so that none is told by colour alone. */
const SHAPES = {
  well: svg`<path d="M4 9h3l5-4v14l-5-4H4zM15 9a4 4 0 0 1 0 6M17.5 6.5a8 8 0 0 1 0 11" />`,
  weak: svg`<path d="M4 9h3l5-4v14l-5-4H4zM15.5 10.5a2.2 2.2 0 0 1 0 3" />`,
  silent: svg`<path d="M4 9h3l5-4v14l-5-4H4zM15.5 9l5.5 6M21 9l-5.5 6" />`,
  loud: svg`<path d="M4 9h3l5-4v14l-5-4H4zM15 9a4 4 0 0 1 0 6M17.5 6.5a8 8 0 0 1 0 11M20 4a12 12 0 0 1 0 16" />`,
  distorted: svg`<path d="M4 9h3l5-4v14l-5-4H4zM15 12l1.5-3 2 6 1.5-4 1.5 3" />`,
};

/** @param {string} way */
export const heardShape = (way) =>
  html`<svg class="glyph" viewBox="0 0 24 24" aria-hidden="true">${SHAPES[/** @type {keyof typeof SHAPES} */ (way)] ?? nothing}</svg>`;

/** @param {State} state */
export const heardTiles = (state) => {
  const told = heardOf(state);
  const all = loudspeakersOf(state);
  return html`<section class="meter-part heard" aria-labelledby="heard-title">
    <h2 id="heard-title" tabindex="-1">${say("heard.title")}</h2>
    <p class="faded">${say("heard.how", { how: sayOne("plays", state.meter.brush) })}</p>
    <ul class="tiles">
      ${repeat(
        all,
        ({ id }) => id,
        ({ id }) => {
          const how = /** @type {string | undefined} */ (told.get(id)?.value);
          const name = titleOf(state, id);
          const words = how ? sayOne("plays", how) : say("heard.unknown");
          return html`<li>
            <button type="button" class="tile ${how ? `tile-${how}` : ""}" data-act="meter.heard" data-point=${id}>
              <span class="tile-name">${name}</span>
              <span class="tile-how">${how ? heardShape(how) : nothing}${words}</span>
            </button>
          </li>`;
        },
      )}
    </ul>
  </section>`;
};

/** What it comes to, in a place that is always there and always as high, so that nothing moves. @param {State} state */
const inShort = (state) => {
  const { diagnosis } = state.meter;
  const told = diagnosis?.of === lineOf(state) ? diagnosis.answer : null;
  return html`<p class="heard-short" role="status" tabindex="0">
    ${told ? verdictMark(told.verdict, told.headline) : html`<span class="faded">${say("heard.none")}</span>`}
    ${told && told.groups.length ? html`<span class="heard-reason">${told.reason}</span>` : nothing}
  </p>`;
};

/** The ways to play, to choose from. @param {State} state */
export const heardBrush = (state) => {
  const told = heardOf(state);
  const left = loudspeakersOf(state).filter(({ id }) => !told.has(id)).length;
  return html`${inShort(state)}
    <div class="brush" role="radiogroup" aria-label=${say("heard.brush")}>
      ${HEARD.map(
        (each) => html`<label class="chip one-of brush-way">
          <input type="radio" name="brush" data-input="meter.brush" data-heard=${each}
            .checked=${live(state.meter.brush === each)} />
          ${heardShape(each)}<span>${sayOne("plays", each)}</span>
        </label>`,
      )}
    </div>
    <button type="button" class="plain-button heard-rest" data-act="meter.rest_well" ?disabled=${!left}>
      ${say("heard.rest")}
    </button>`;
};
