/**
 * The engine's room: starts Python, opens the core, and passes text to its one door and back.
 * The runtime is compiled and the archives travel while its scripts are on their way.
 * They are imported from as they are: nothing is unpacked, and what a copy of a started engine
 * has not imported yet is found in them later.
 */

import { compileEarly } from "./compiling.js";
import { findCause } from "./failing.js";
import { NotCome, countComing, watchFiles } from "./fetching.js";
import { ARCHIVES, BUILD } from "./py/build.js";
import { startQuickly } from "./snapshot/quick.js";

/** @typedef {import("./snapshot/quick.js").Start} Start */
/** @typedef {import("./snapshot/quick.js").Handle} Handle */
/** @typedef {import("./py/pyodide.mjs").PyodideAPI} Python */

const here = (/** @type {string} */ path) => new URL(path, self.location.href).href;

const COMPILED = here("./py/pydantic_core.wasm");
// Where Python would import it from; the runtime knows a loaded module by its place.
const COMPILED_PLACE =
  "/lib/python3.14/site-packages/pydantic_core/_pydantic_core.cpython-314-wasm32-emscripten.so";
const PLACES = ARCHIVES.map((name) => `/lib/${name}`);
const OPEN = `
import sys
from importlib.util import module_from_spec, spec_from_file_location

sys.path += ${JSON.stringify(PLACES)}
NAME = "pydantic_core._pydantic_core"
spec = spec_from_file_location(NAME, "${COMPILED_PLACE}")
sys.modules[NAME] = module_from_spec(spec)
spec.loader.exec_module(sys.modules[NAME])
`;
const DOOR = "from pycore.door import handle\nhandle";
const SCRIPTS = [here("./py/pyodide.mjs"), here("./py/pyodide.asm.mjs")];
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
const QUIET_MILLISECONDS = 4000;

/** @param {unknown} message */
const post = (message) => self.postMessage(message);

/** @param {string} stage */
const tellStage = (stage) => post({ stage });

/** @param {string} path */
const fetchBytes = async (path) =>
  new Uint8Array(await (await fetch(here(path))).arrayBuffer());

/** @param {string} path */
const fetchEarly = (path) => {
  const bytes = fetchBytes(path);
  // Reported where it is waited for.
  bytes.catch(() => {});
  return bytes;
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

const count = countComing((loading) => post({ loading }));

/**
 * What keeps any start from coming to its end: the runtime waits for ever for what does not come.
 * @type {Promise<never>}
 */
const stopped = new Promise((_, reject) => {
  compileEarly(reject, count);
  watchFiles(reject, count);
});
// Heard where the engine is started.
stopped.catch(() => {});

const watcher = watchBytes();
tellStage("fetch");
const archives = ARCHIVES.map((name) => fetchEarly(`./py/${name}`));
const scripts = count(
  Promise.all([import("./py/pyodide.mjs"), import("./py/pyodide.asm.mjs")]),
).catch((error) => {
  throw new NotCome(String(error), { cause: error });
});
scripts.catch(() => {});

/** @param {Python} python */
const placeArchives = async (python) => {
  for (const [at, place] of PLACES.entries()) {
    python.FS.writeFile(place, (await archives[at]) ?? "", { canOwn: true });
  }
};

/**
 * A module maker that loads the compiled module before Python starts, at the same place in
 * memory each time; only so can a copy of that memory be woken.
 * @param {(settings: any) => Promise<any>} makeModule
 * @param {(module: any) => Promise<void>} onModule
 */
const withCompiled = (makeModule, onModule) => async (/** @type {any} */ settings) => {
  const { locateFile } = settings;
  settings.dynamicLibraries = [COMPILED_PLACE];
  settings.locateFile = (/** @type {string} */ name) =>
    name === COMPILED_PLACE ? COMPILED : locateFile(name);
  const module = await makeModule(settings);
  await onModule(module);
  return module;
};

/** @type {Start} */
const startUnwatched = async ({ makes = false, bytes, onModule }) => {
  tellStage(bytes ? "wake" : "start");
  const compiled = bytes ? null : fetchEarly("./py/pydantic_core.wasm");
  const [{ loadPyodide }, { default: makeModule }] = await scripts;
  /** @type {import("./snapshot/memory.js").Module | null} */
  let made = null;
  const maker = withCompiled(makeModule, async (module) => {
    made = module;
    await onModule?.(module);
  });
  const python = await loadPyodide({
    indexURL: here("./py/"),
    stdLibURL: here("./py/python_stdlib.zip"),
    lockFileContents: NO_PACKAGES,
    enableRunUntilComplete: false,
    ...(bytes && { _loadSnapshot: bytes, createPyodideModule: maker }),
    ...(makes && { _makeSnapshot: true, createPyodideModule: maker }),
  });
  tellStage("unpack");
  await placeArchives(python);
  if (compiled) {
    python.FS.mkdirTree(COMPILED_PLACE.slice(0, COMPILED_PLACE.lastIndexOf("/")));
    python.FS.writeFile(COMPILED_PLACE, makes ? "" : await compiled);
  }
  tellStage("open");
  if (!bytes) python.runPython(OPEN);
  const handle = /** @type {Handle} */ (python.runPython(DOOR));
  const copy = () => /** @type {Uint8Array<ArrayBuffer>} */ (python.makeMemorySnapshot());
  return { handle, copy, module: made };
};

/** @type {Start} */
const start = (how) => Promise.race([startUnwatched(how), stopped]);

/** Keep the copy that was taken, and tell whether that went well. @param {() => Promise<void>} keep */
const keepCopy = async (keep) => {
  try {
    await keep();
    post({ way: "made" });
  } catch (error) {
    console.warn("no copy was kept:", String(error));
    post({ way: "unkept" });
  }
};

/**
 * Answer from now on, and see to what can wait when nothing has been asked for a while.
 * @param {import("./snapshot/quick.js").Started} started
 */
const serve = ({ handle, later, onBroken }) => {
  let waiting = true;
  const seeToIt = () => {
    waiting = false;
    if (later) keepCopy(later);
  };
  let clock = setTimeout(seeToIt, QUIET_MILLISECONDS);
  self.addEventListener("message", (event) => {
    if (waiting) clearTimeout(clock);
    try {
      post({ answer: handle(event.data) });
    } catch (error) {
      // The door never raises, so this is the interpreter itself: it cannot be used again.
      onBroken().finally(() => post({ broken: String(error) }));
    }
    if (waiting) clock = setTimeout(seeToIt, QUIET_MILLISECONDS);
  });
};

/** @param {unknown} error */
const tellFailure = async (error) => {
  post({ failed: String(error), ...(await findCause(error, SCRIPTS)) });
};

startQuickly({ start, build: BUILD, after: self.name }).then((started) => {
  watcher.disconnect();
  serve(started);
  post({ ready: true, way: started.way, build: BUILD });
}, tellFailure);
