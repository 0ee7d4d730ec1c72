/* Runs in the page: touches the next tap and waits until the answer to it is painted, and then
   until the page is at rest, so that the next touch finds it as a person would. */

(() => {
  const taps = () => [...document.querySelectorAll("[data-act='point.tap']")];
  const isSet = (tap) => tap.getAttribute("aria-pressed") === "true";

  const painted = () =>
    new Promise((resolve) => {
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => resolve(performance.now());
        port2.postMessage(null);
      });
    });

  const until = (seen) =>
    new Promise((resolve, reject) => {
      const watcher = new MutationObserver(() => seen() && end());
      const late = setTimeout(() => end(new Error("no answer in 60 s")), 60_000);
      const end = (error) => {
        watcher.disconnect();
        clearTimeout(late);
        error ? reject(error) : resolve();
      };
      watcher.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
      if (seen()) end();
    });

  const rest = async () => {
    for (let quiet = 0; quiet < 5; quiet++) {
      const before = document.body.innerText;
      await new Promise((resolve) => setTimeout(resolve, 100));
      if (document.body.innerText !== before) quiet = -1;
    }
  };

  globalThis.touchTap = async () => {
    const now = taps().findIndex(isSet);
    const next = now === 1 ? 2 : 1;
    const started = performance.now();
    taps()[next].click();
    await until(() => isSet(taps()[next]));
    const ended = await painted();
    await rest();
    return ended - started;
  };
})();
