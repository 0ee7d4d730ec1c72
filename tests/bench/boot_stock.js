/* The same engine as its makers publish it: stock runtime and library, wheels, sources. */

const ROOM = "/lib/python3.14/site-packages";
const ARCHIVES = ["wheel0", "wheel1", "wheel2", "wheel3", "wheel4", "wheel5", "core"];
const NO_PACKAGES = JSON.stringify({
  info: { abi_version: "2026_0", arch: "wasm32", platform: "emscripten_5_0_3", python: "3.14.2", version: "314.0.7" },
  packages: {},
});

const boot = async () => {
  const fetchBytes = async (name) => (await fetch(`./stock/${name}.zip`)).arrayBuffer();
  const archives = Promise.all(ARCHIVES.map(fetchBytes));
  const { loadPyodide } = await import("./stock/pyodide.mjs");
  const python = await loadPyodide({
    indexURL: "./stock/",
    lockFileContents: NO_PACKAGES,
    enableRunUntilComplete: false,
  });
  for (const archive of await archives) python.unpackArchive(archive, "zip", { extractDir: ROOM });
  return python.runPython("from pycore.door import handle\nhandle");
};

boot().then(
  (handle) => {
    self.addEventListener("message", ({ data }) => self.postMessage({ answer: handle(data) }));
    self.postMessage({ ready: true });
  },
  (error) => self.postMessage({ failed: String(error) }),
);
