/* Starts one engine, asks it one thing, and keeps the times where the measurement finds them. */

const script = location.search === "?stock" ? "boot_stock.js" : "worker.js";
const policy = globalThis.trustedTypes?.createPolicy("app", { createScriptURL: (text) => text });
// An engine named so is never woken from a copy.
const options = { type: "module", name: location.search === "?again" ? "again" : "" };
const started = performance.now();
const worker = new Worker(policy?.createScriptURL(script) ?? script, options);
const since = () => performance.now() - started;
const TALLY = {
  line_v: "70.7",
  amplifier_w: "120",
  outputs: [],
  rows: [{ count: "6", tap_w: "5", output: 0 }],
  ids: { job: "a2a1", hand: "a2a", next: 2 },
  name: "first",
};
const ASK = JSON.stringify({ n: 1, ask: "tally", manner: { language: "en" }, body: TALLY });

globalThis.booted = new Promise((resolve) => {
  const times = {};
  worker.onmessage = ({ data }) => {
    if (data.failed) resolve({ failed: data.failed });
    if (data.ready) {
      Object.assign(times, { way: data.way ?? "plain", ready: since() });
      worker.postMessage(ASK);
    }
    if (data.answer) resolve({ ...times, answered: since(), right: Boolean(JSON.parse(data.answer).body) });
  };
  worker.onerror = ({ message }) => resolve({ failed: message });
});
