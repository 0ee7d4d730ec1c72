/* Runs before the page's own scripts: notes when the job is painted and when the engine is ready. */

(() => {
  const painted = () =>
    new Promise((resolve) => requestAnimationFrame(() => setTimeout(() => resolve(performance.now()))));

  const job = new Promise((resolve) => {
    const look = () => {
      if (!document.querySelector("main.sheet-job .card, main.sheet-job li, main.sheet-job section")) return;
      watcher.disconnect();
      resolve(painted());
    };
    const watcher = new MutationObserver(look);
    watcher.observe(document, { subtree: true, childList: true });
  });

  const engine = new Promise((resolve) => {
    const Plain = globalThis.Worker;
    globalThis.Worker = class extends Plain {
      constructor(...words) {
        super(...words);
        this.addEventListener("message", ({ data }) => data?.ready && resolve({ ready: performance.now(), way: data.way }));
      }
    };
  });

  globalThis.visit = Promise.all([job, engine]).then(([seen, { ready, way }]) => ({
    "first paint": performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? Number.NaN,
    "saved job painted": seen,
    "engine ready": ready,
    way,
  }));
})();
