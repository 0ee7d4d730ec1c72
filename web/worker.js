/**
 * The engine's room: starts Python, unpacks the core, and passes text to its one door and back.
 * The archives are asked for before the runtime starts, so that they travel while it does.
 */

const ROOM = "/lib/python3.14/site-packages";
const NO_PACKAGES = JSON.stringify({
  info: {
    abi_version: "2026_0",
    arch: "wasm32",
    platform: "emscripten_5_0_3",
    python: "3.14.2",
    version: "314.0.7",
  },
  packages: {},
});

/** @param {unknown} message */
const post = (message) => self.postMessage(message);

/** @param {string} stage */
const tellStage = (stage) => post({ stage });

/**
 * The bytes of one of our files; a failure says which file and why.
 * @param {string} path
 */
const fetchBytes = async (path) => {
  const response = await fetch(new URL(path, self.location.href));
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  return response.arrayBuffer();
};

/** Tell how many bytes have arrived, file by file. */
const watchBytes = () => {
  let bytes = 0;
  const watcher = new PerformanceObserver((seen) => {
    for (const entry of seen.getEntriesByType("resource")) {
      const { decodedBodySize } = /** @type {PerformanceResourceTiming} */ (entry);
      bytes += decodedBodySize;
    }
    post({ bytes });
  });
  watcher.observe({ type: "resource", buffered: true });
  return watcher;
};

const boot = async () => {
  const watcher = watchBytes();
  tellStage("fetch");
  const archives = Promise.all([fetchBytes("./py/site.zip"), fetchBytes("./py/pycore.zip")]);
  archives.catch(() => {});
  const { loadPyodide } = await import("./py/pyodide.mjs");
  tellStage("start");
  const python = await loadPyodide({
    indexURL: "./py/",
    stdLibURL: new URL("./py/python_stdlib.zip", self.location.href).href,
    lockFileContents: NO_PACKAGES,
    enableRunUntilComplete: false,
  });
  tellStage("unpack");
  for (const archive of await archives) python.unpackArchive(archive, "zip", { extractDir: ROOM });
  tellStage("open");
  const handle = python.runPython("from pycore.door import handle\nhandle");
  watcher.disconnect();
  return /** @type {(text: string) => string} */ (handle);
};

/** @param {unknown} error */
const tellFailure = (error) => post({ failed: String(error) });

boot().then((handle) => {
  self.addEventListener("message", (event) => {
    try {
      post({ answer: handle(event.data) });
    } catch (error) {
      // The door never raises, so this is the interpreter itself: it cannot be used again.
      post({ broken: String(error) });
    }
  });
  post({ ready: true });
}, tellFailure);
