/** Hands a text over as a file: by the share sheet where a download leads nowhere. */

const standsAlone = () => matchMedia("(display-mode: standalone)").matches;

const JSON_TYPE = "application/json";

/** @param {string} text @param {string} name @param {string} type */
const fileOf = (text, name, type = JSON_TYPE) => new File([text], name, { type });

/** Whether this device has a share sheet that takes files. */
export const canSendFiles = () =>
  Boolean(navigator.canShare?.({ files: [fileOf("{}", "job.json")] }));

/**
 * By the share sheet. Says whether it went out: the person may close the sheet, and that is an
 * answer, not a fault.
 * @param {string} text @param {string} name @param {string} [type]
 */
export const sendFile = (text, name, type) =>
  navigator.share({ files: [fileOf(text, name, type)] }).then(
    () => true,
    () => false,
  );

/** @param {string} text @param {string} name @param {string} [type] */
export const saveFile = (text, name, type) => {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(fileOf(text, name, type));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return true;
};

/**
 * @param {string} text @param {string} name @param {string} [type] of a file that is no job
 * @returns {Promise<boolean>} whether it has left the app
 */
export const offerFile = async (text, name, type) => {
  const touch = matchMedia("(pointer: coarse)").matches;
  if (standsAlone() && touch && canSendFiles()) return sendFile(text, name, type);
  return saveFile(text, name, type);
};
