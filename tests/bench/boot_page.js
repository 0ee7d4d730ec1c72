/* Starts one engine and keeps the promise of its times where the measurement finds it. */

const policy = globalThis.trustedTypes?.createPolicy("app", { createScriptURL: (text) => text });
const address = `boot_worker.js${location.search}`;
const worker = new Worker(policy?.createScriptURL(address) ?? address, { type: "module" });

globalThis.booted = new Promise((resolve) => {
  worker.onmessage = ({ data }) => resolve(data);
  worker.onerror = ({ message }) => resolve({ failed: message });
});
