/**
 * The questions a copy is put before it may answer a person. They also build every model that
 * an edit needs, so a copy made after them has these ready.
 */

/** @typedef {(text: string) => string} Handle */

const MANNER = { language: "en", length: "m", decimal: ".", today: "2026-01-01" };
const TALLY = {
  line_v: "70.7",
  amplifier_w: "120",
  outputs: [],
  rows: [
    { count: "6", tap_w: "5", output: 0 },
    { count: "4", tap_w: "7.5", output: 0 },
  ],
  ids: { job: "a2a1", hand: "a2a", next: 2 },
  name: "proof",
};
const COMMAND = { do: "set_limits", changes: { loss_db: 1 } };

/**
 * @param {Handle} handle
 * @param {string} ask
 * @param {unknown} body
 */
const ask = (handle, ask, body) => {
  const text = handle(JSON.stringify({ n: 1, ask, manner: MANNER, body }));
  if (!JSON.parse(text).body) throw new Error(`the engine did not answer ${ask}: ${text}`);
  return text;
};

/** All answers in one text. Throws when one is not an answer. @param {Handle} handle */
export const prove = (handle) => {
  const tally = ask(handle, "tally", TALLY);
  const { job } = JSON.parse(tally).body;
  const edit = ask(handle, "edit", { job, command: COMMAND });
  return [ask(handle, "version", {}), ask(handle, "catalogue", {}), tally, edit].join("\n");
};
