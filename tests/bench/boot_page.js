/* Starts one engine, asks it one thing, and keeps the times where the measurement finds them. */

const script = location.search === "?stock" ? "boot_stock.js" : "worker.js";
const policy = globalThis.trustedTypes?.createPolicy("app", { createScriptURL: (text) => text });
const started = performance.now();
const worker = new Worker(policy?.createScriptURL(script) ?? script, { type: "module" });
const since = () => performance.now() - started;
const ASK = JSON.stringify({ n: 1, ask: "version", manner: { language: "en" }, body: {} });

globalThis.booted = new Promise((resolve) => {
  const times = {};
  worker.onmessage = ({ data }) => {
    if (data.failed) resolve({ failed: data.failed });
    if (data.ready) {
      Object.assign(times, { way: data.way ?? "plain", ready: since() });
      worker.postMessage(ASK);
    }
    if (data.answer) resolve({ ...times, answered: since(), right: JSON.parse(data.answer).n === 1 });
  };
  worker.onerror = ({ message }) => resolve({ failed: message });
});
