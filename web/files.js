/** Hands a text over as a file: by the share sheet where a download leads nowhere. */

const standsAlone = () => matchMedia("(display-mode: standalone)").matches;

/** @param {string} text @param {string} name */
const fileOf = (text, name) => new File([text], name, { type: "application/json" });

/** Whether this device has a share sheet that takes files. */
export const canSendFiles = () =>
  Boolean(navigator.canShare?.({ files: [fileOf("{}", "job.json")] }));

/**
 * By the share sheet. Says whether it went out: the person may close the sheet, and that is an
 * answer, not a fault.
 * @param {string} text @param {string} name
 */
export const sendFile = (text, name) =>
  navigator.share({ files: [fileOf(text, name)] }).then(
    () => true,
    () => false,
  );

/** @param {string} text @param {string} name */
export const saveFile = (text, name) => {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(fileOf(text, name));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return true;
};

/**
 * @param {string} text @param {string} name
 * @returns {Promise<boolean>} whether it has left the app
 */
export const offerFile = async (text, name) => {
  const touch = matchMedia("(pointer: coarse)").matches;
  if (standsAlone() && touch && canSendFiles()) return sendFile(text, name);
  return saveFile(text, name);
};
