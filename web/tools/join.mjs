/* Joins the modules of the page into a few files, in the folder named on the command line.
   A browser asks the service worker for every file by itself, and a page of 160 modules was
   painted twice as late as one of ten. Names stay whole and lines stay lines, so that what a
   browser says of a fault can be read; comments go, each module is headed by its name. Nothing
   else is changed or left out. */
import { mkdtempSync, readdirSync, renameSync, rmSync } from "node:fs";
import { join, relative, resolve, sep } from "node:path";
import { rollup } from "@rollup/wasm-node";

const folder = resolve(process.argv[2]);

// What starts the engine, and waits for nothing else.
const EARLY = ["door.js", "engine.js", "manner.js", "trust.js", "py/build.js"];
// Folders that lean on nothing of ours.
const LOWEST = ["generated", "vendor"];
const ENTRIES = [["engine", "app"], ["worker"]];
// The runtime's own scripts stay as its makers made them.
const isApart = (id) => id.endsWith(".mjs");
const isLicence = (comment) => comment.includes("@license");

const nameOf = (id) => relative(folder, id).split(sep).join("/");

const isAbove = (folder) => Boolean(folder) && !LOWEST.includes(folder);

/** The folders that a module beside them needs, by itself or by another beside them. */
const findNeeded = (id, look) =>
  look(id).importedIds.flatMap((each) => {
    const [first, ...rest] = nameOf(each).split("/");
    if (EARLY.includes(nameOf(each))) return [];
    if (!rest.length) return findNeeded(each, look);
    return isAbove(first) ? [first] : [];
  });

const isWantedByFolder = (id, look) =>
  look(id).importers.some((each) => {
    const [first, ...rest] = nameOf(each).split("/");
    return rest.length ? isAbove(first) : isWantedByFolder(each, look);
  });

/**
 * A folder travels as one file of its name. What lies beside the folders travels below them all
 * when it needs none of them, with the one it needs when another wants it, and else above.
 */
const fileOf = (id, { getModuleInfo }) => {
  const [first, ...rest] = nameOf(id).split("/");
  if (EARLY.includes(nameOf(id))) return "engine";
  if (rest.length) return first;
  const [needed] = findNeeded(id, getModuleInfo);
  if (!needed) return "ground";
  return isWantedByFolder(id, getModuleInfo) ? needed : "app";
};

/** Where texts, templates and patterns stand: nothing in them is a comment. */
const findQuoted = (node, found = []) => {
  if (node.type === "TemplateElement" || node.regex || typeof node.value === "string") {
    found.push([node.start, node.end]);
  }
  for (const value of Object.values(node)) {
    for (const child of [value].flat()) if (child?.type) findQuoted(child, found);
  }
  return found;
};

const dropComments = (code, quoted) => {
  const plain = (text) =>
    text
      .replace(/\/\*[^]*?\*\/|\/\/[^\n]*/g, (comment) => (isLicence(comment) ? comment : ""))
      .replace(/[ \t]*\n(?:[ \t]*\n)+/g, "\n");
  let [done, place] = ["", 0];
  for (const [start, end] of quoted.sort(([one], [other]) => one - other)) {
    if (start < place) continue;
    done += plain(code.slice(place, start)) + code.slice(start, end);
    place = end;
  }
  return done + plain(code.slice(place));
};

const plainly = {
  name: "plainly",
  transform(code, id) {
    const short = dropComments(code, findQuoted(this.parse(code))).trim();
    return { code: `/* ${nameOf(id)} */\n${short}\n`, map: null };
  },
};

/** Files that need each other start in an order that depends on who asks first. */
const demandOrder = (files) => {
  let left = files;
  while (left.length) {
    const names = left.map(({ fileName }) => fileName);
    const waiting = left.filter(({ imports }) => imports.some((name) => names.includes(name)));
    if (waiting.length === left.length) {
      throw new Error(`these need each other, or something that does: ${names.join(", ")}`);
    }
    left = waiting;
  }
};

/** What is only warned of can break a start. */
const refuse = ({ message }) => {
  throw new Error(message);
};

const made = mkdtempSync(`${folder}.joined-`);
try {
  const joined = new Set();
  for (const names of ENTRIES) {
    const input = Object.fromEntries(names.map((name) => [name, join(folder, `${name}.js`)]));
    const bundle = await rollup({
      input, external: isApart, treeshake: false, plugins: [plainly], onwarn: refuse,
      preserveEntrySignatures: "allow-extension",
    });
    const { output } = await bundle.write({
      dir: made, format: "es", entryFileNames: "[name].js", chunkFileNames: "[name].js",
      minifyInternalExports: false,
      ...(names.length > 1 && { manualChunks: fileOf }),
    });
    demandOrder(output);
    for (const id of bundle.watchFiles) joined.add(id);
    await bundle.close();
  }
  for (const id of joined) rmSync(id);
  for (const name of readdirSync(made)) renameSync(join(made, name), join(folder, name));
} finally {
  rmSync(made, { recursive: true });
}
