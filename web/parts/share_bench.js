/** Under the share screen: what is done with the link and the file. */

import { html, nothing } from "../markup.js";
import { canSendFiles } from "../files.js";
import { benchButton } from "../pieces/button.js";
import { say } from "../say.js";

/** @param {import("../state").State} state */
export const shareBench = ({ desk, share }) => {
  if (!desk) return nothing;
  const job = { job: desk.id };
  const off = share?.id !== desk.id || !share.address;
  return html`<div class="bench-buttons">
    ${"share" in navigator ? benchButton("send", say("share.send"), "share.send", {}, { off, chief: true }) : nothing}
    ${benchButton("copy", say("share.copy"), "share.copy", {}, { off, chief: !("share" in navigator) })}
    ${canSendFiles() ? benchButton("send", say("share.send_file"), "share.send_file", job) : nothing}
    ${benchButton("file", say("share.save"), "share.save", job)}
  </div>`;
};
