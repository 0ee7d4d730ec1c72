/* Boots the engine named in the address and sends back how many milliseconds each stage took. */

const ROOM = "/lib/python3.14/site-packages";
const NO_PACKAGES = JSON.stringify({
  info: { abi_version: "2026_0", arch: "wasm32", platform: "emscripten_5_0_3", python: "3.14.2", version: "314.0.7" },
  packages: {},
});
const kind = self.location.search.slice(1);
const names = {
  stock: ["wheel0.zip", "wheel1.zip", "wheel2.zip", "wheel3.zip", "wheel4.zip", "wheel5.zip", "core.zip"],
  ours: ["site.zip", "pycore.zip"],
}[kind];

const stages = {};
let last = performance.now();
const end = (stage) => {
  const now = performance.now();
  stages[stage] = now - last;
  last = now;
};

try {
  const fetchBytes = async (name) => (await fetch(`./${kind}/${name}`)).arrayBuffer();
  const archives = Promise.all(names.map(fetchBytes));
  const { loadPyodide } = await import(`./${kind}/pyodide.mjs`);
  const python = await loadPyodide({
    indexURL: `./${kind}/`,
    lockFileContents: NO_PACKAGES,
    enableRunUntilComplete: false,
  });
  end("runtime");
  for (const archive of await archives) python.unpackArchive(archive, "zip", { extractDir: ROOM });
  end("unpack");
  const handle = python.runPython("from pycore.door import handle\nhandle");
  end("import");
  const answer = handle('{"n": 1, "ask": "version", "manner": {"language": "en"}, "body": {}}');
  if (!JSON.parse(answer).body) throw new Error(answer);
  end("first answer");
  self.postMessage(stages);
} catch (error) {
  self.postMessage({ failed: String(error) });
}
