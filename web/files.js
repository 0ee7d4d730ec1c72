/** Hands a text over as a file: by the share sheet where a download leads nowhere. */

const standsAlone = () => matchMedia("(display-mode: standalone)").matches;

/** @param {string} text @param {string} name */
export const offerFile = async (text, name) => {
  const file = new File([text], name, { type: "application/json" });
  const touch = matchMedia("(pointer: coarse)").matches;
  if (standsAlone() && touch && navigator.canShare?.({ files: [file] })) {
    // The person may close the share sheet: that is an answer, not a fault.
    await navigator.share({ files: [file] }).catch(() => {});
    return;
  }
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
};
