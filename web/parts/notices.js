/** What the person should know now, above everything else: a failed start, an update, a refusal. */

import { draftOffered } from "../drafts.js";
import { html, nothing } from "../markup.js";
import { glyph } from "../pieces/glyphs.js";
import { say } from "../say.js";

/** @typedef {import("../state").State} State */

/** So many letters stand beside their buttons. */
const SHORT = 40;

/** @param {State} state */
const failedStart = ({ engine: { stage, cause } }) =>
  stage === "failed" && cause
    ? html`<div class="notice bad" role="alert">
        <p>${say("engine.failed")} ${say(`engine.cause_${cause.is}`, cause)}</p>
        <button type="button" class="plain-button" data-act="engine.retry">
          ${say("engine.retry")}
        </button>
      </div>`
    : nothing;

/** @param {State} state */
const update = (state) =>
  state.update
    ? html`<div class="notice">
        <p>${say("update.ready")}</p>
        <button type="button" class="plain-button" data-act="update.accept">
          ${say("update.accept")}
        </button>
      </div>`
    : nothing;

/** @param {State} state */
const readsOnly = ({ desk, place }) =>
  desk?.pen === "theirs" && place.job === desk.id
    ? html`<div class="notice">
        <p>${say("tabs.reads_only")}</p>
        <button type="button" class="plain-button" data-act="tabs.want">${say("tabs.want")}</button>
      </div>`
    : nothing;

/** @param {State} state */
const notice = ({ notice: now, place }) =>
  now && (!now.on || now.on === place.screen)
    ? html`<div class="notice ${now.bad ? "bad" : now.words.length <= SHORT ? "slim" : ""}" role=${now.bad ? "alert" : "status"}>
        <p>${now.words}</p>
        ${now.again
          ? html`<button type="button" class="plain-button" data-act=${now.again}>
              ${now.again_words ?? say("notice.put_back")}
            </button>`
          : nothing}
        <button type="button" class="square" data-act="notice.close" aria-label=${say("notice.close")}>
          ${glyph("close")}
        </button>
      </div>`
    : nothing;

/** A form that something else took the place of. @param {State} state */
const halfFilled = (state) => {
  const draft = draftOffered(state);
  const job = state.jobs?.find(({ id }) => id === draft?.job)?.name ?? "";
  return draft
    ? html`<div class="notice slim" role="status">
        <p>${say("draft.waits", { title: draft.form.title, job })}</p>
        <button type="button" class="plain-button" data-act="draft.go_on" data-key=${draft.key}>
          ${say("draft.go_on")}
        </button>
        <button type="button" class="square" data-act="draft.drop" data-key=${draft.key}
          aria-label=${say("draft.drop")}>${glyph("close")}</button>
      </div>`
    : nothing;
};

/** @param {"waiting.title" | "waiting.wishes"} title @param {string[]} codes */
const waitingList = (title, codes) =>
  codes.length
    ? html`<div class="notice" role="status">
        <div>
          <p>${say(title)}</p>
          <ul>
            ${codes.map((code) => html`<li>${say(/** @type {any} */ (code))}</li>`)}
          </ul>
        </div>
      </div>`
    : nothing;

/** What the person did or asked for that the engine has not done yet. @param {State} state */
const waiting = ({ desk, place, engine, wishes }) => {
  if (engine.stage === "ready") return nothing;
  const acts = place.job === desk?.id ? (desk?.waiting.filter(({ kept }) => kept) ?? []) : [];
  return html`${waitingList("waiting.title", acts.map(({ words }) => words))}
  ${waitingList("waiting.wishes", wishes)}`;
};

/** @param {State} state */
export const notices = (state) => html`
  ${failedStart(state)} ${update(state)} ${readsOnly(state)} ${waiting(state)}
  ${halfFilled(state)} ${notice(state)}
`;
