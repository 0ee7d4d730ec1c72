/** A job on its way to somebody else: the link, its QR code, the file. */

import { html, nothing } from "../markup.js";
import { codePicture } from "../pieces/code.js";
import { say } from "../say.js";
import { notCopied, notedOf } from "../travel/copies.js";

/** @typedef {import("../state").State} State */
/** @typedef {import("../state").Share} Share */

/** How much of the job is nowhere else. @param {State} state */
const copyWords = (state) => {
  const { desk, copied } = state;
  const count = notCopied(state);
  if (!desk || notedOf(copied, desk.id) === undefined) return say("share.no_copy");
  if (count <= 0) return say("share.last_copy");
  return count === 1 ? say("share.old_copy.one") : say("share.old_copy.many", { count: `${count}` });
};

/** Its place is kept while it is made: nothing below it moves when it comes. @param {Share | null} share @param {string} name */
const code = (share, name) => {
  const now = share?.code;
  return html`<section class="card" aria-labelledby="code-title">
    <h2 id="code-title">${say("share.code")}</h2>
    ${now?.too_large
      ? html`<p>${now.words}</p>`
      : html`<p class="quiet">${say("share.code_how")}</p>
          ${now
            ? codePicture(now, say("share.code_alt", { name }))
            : html`<p class="code-place" role="status">${say("share.making")}</p>`}`}
  </section>`;
};

/** As tall before it is written. @param {Share | null} share */
const link = (share) => html`<section class="card" aria-labelledby="link-title">
  <h2 id="link-title">${say("share.link")}</h2>
  <p>${say("share.whole")}</p>
  <div class="field">
    <label for="share-link">${share?.length ?? say("share.making")}</label>
    <textarea id="share-link" class="share-link" rows="3" readonly .value=${share?.address ?? ""}></textarea>
  </div>
  ${share?.advice ? html`<p class="share-advice">${share.advice}</p>` : nothing}
</section>`;

/** Whether this browser promises to keep it all; it may tell late, so it stands last. @param {State} state */
const promise = ({ kept_for_good }) => {
  if (kept_for_good === null) return nothing;
  if (kept_for_good) return html`<p class="quiet">${say("storage.kept")}</p>`;
  return html`<p class="share-advice">${say("storage.may_clear")}</p>
    <button type="button" class="plain-button" data-act="storage.ask">${say("storage.ask")}</button>`;
};

/** @param {State} state */
export const shareSheet = (state) => {
  const { desk, share } = state;
  if (!desk) return nothing;
  const mine = share?.id === desk.id && share.rev === desk.job.rev ? share : null;
  return html`<p class="share-copy quiet">${copyWords(state)}</p>
    ${mine?.failed
      ? html`<section class="card"><p role="alert">${mine.failed}</p></section>`
      : html`${code(mine, desk.job.name)} ${link(mine)}`}
    <section class="card" aria-labelledby="file-title">
      <h2 id="file-title">${say("share.file")}</h2>
      <p>${say("share.file_how")}</p>
      <button type="button" class="plain-button" data-act="share.save_all">${say("share.save_all")}</button>
      ${promise(state)}
    </section>`;
};
