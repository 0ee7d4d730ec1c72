/* Runs one Python file inside the runtime that is shipped to the browser, here in Node.
   The task comes through standard input, a JSON object:
     index    folder with pyodide.mjs and the files beside it
     mounts   {"/place inside": "folder outside"}
     unpack   [["archive outside", "zip" | "wheel"], ...] into site-packages, in this order;
              a pydantic_core.wasm beside one is put where Python imports it from
     script   the Python file
     argument text the script finds as the global ARGUMENT
   The script ends the process with the integer it leaves in the global EXIT_CODE (0 when it
   leaves none). */
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";

const SITE = "/lib/python3.14/site-packages";
const COMPILED = `${SITE}/pydantic_core/_pydantic_core.cpython-314-wasm32-emscripten.so`;
// An empty package list: nothing is ever looked up in another place.
const LOCK = JSON.stringify({
  info: { abi_version: "2026_0", arch: "wasm32", platform: "emscripten_5_0_3", python: "3.14.2", version: "314.0.7" },
  packages: {},
});

const ENVIRONMENT = {
  HOME: "/home/pyodide",
  PYTHONHASHSEED: "0",
  PYTHONDONTWRITEBYTECODE: "1",
  // Byte code without columns is a quarter smaller; a traceback still names file and line.
  PYTHONNODEBUGRANGES: "1",
};

async function run(task) {
  const { loadPyodide } = await import(pathToFileURL(join(task.index, "pyodide.mjs")).href);
  const pyodide = await loadPyodide({
    indexURL: task.index,
    lockFileContents: LOCK,
    enableRunUntilComplete: false,
    env: { ...ENVIRONMENT, ...task.environment },
  });
  for (const [inside, outside] of Object.entries(task.mounts ?? {})) {
    pyodide.FS.mkdirTree(inside);
    pyodide.mountNodeFS(inside, outside);
  }
  for (const [archive, kind] of task.unpack ?? []) {
    // A copy: unpackArchive refuses Node's own Buffer.
    pyodide.unpackArchive(new Uint8Array(readFileSync(archive)), kind, { extractDir: SITE });
    const compiled = join(dirname(archive), "pydantic_core.wasm");
    if (!existsSync(compiled)) continue;
    pyodide.FS.mkdirTree(dirname(COMPILED));
    pyodide.FS.writeFile(COMPILED, readFileSync(compiled));
  }
  pyodide.globals.set("ARGUMENT", task.argument ?? "");
  await pyodide.runPythonAsync(readFileSync(task.script, "utf8"), { filename: task.script });
  return pyodide.globals.get("EXIT_CODE") ?? 0;
}

try {
  process.exitCode = await run(JSON.parse(readFileSync(0, "utf8")));
} catch (error) {
  // The message holds Python's own traceback; the stack would only show the runtime's machine code.
  console.error(String(error.message ?? error));
  process.exitCode = 1;
}
