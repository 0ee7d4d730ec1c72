/**
 * Keeps the whole app on the device. The build fills VERSION (a hash of FILES) and FILES
 * ([path, "sha256-..."]). One cache for each try to install, sealed by a marker: a broken or
 * mixed deployment can never be served, and no browser reuses a cache it has dropped once.
 * Long because a worker of several files could itself be half of one build and half of another.
 */

const VERSION = "__VERSION__";
/** @type {Array<[string, string]>} */
const FILES = __FILES__;

const BASE = new URL("./", self.location.href).href;
// Several apps may share an origin; each keeps to its own caches.
const PREFIX = `rungline|${new URL(BASE).pathname}|`;
const MARK = new URL("__sealed", BASE).href;
const WORKER = new URL("worker.js", BASE).href;
const WORKER_RULES =
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'";

// An update comes as what changed since the version that is kept: patches/VERSION.patch leads from
// that version to a later one, and the next from there. Further back than this all comes whole.
const MOST_PATCHES = 12;

/** @param {string} path */
const addressOf = (path) => new URL(path, BASE).href;
const ours = async () => (await caches.keys()).filter((name) => name.startsWith(PREFIX));

/** @param {string} name */
const openSealed = async (name) => {
  const cache = await caches.open(name);
  return (await cache.match(MARK)) ? cache : null;
};

/** @type {Promise<Cache | null> | null} */
let sealed = null;
const findSealed = async () => {
  for (const name of await ours()) {
    const cache = name.startsWith(`${PREFIX}${VERSION}|`) ? await openSealed(name) : null;
    if (cache) return cache;
  }
  sealed = null;
  return null;
};
const open = () => (sealed ??= findSealed());

/** @param {Cache} cache */
const findLost = async (cache) => {
  for (const [path] of FILES) if (!(await cache.match(addressOf(path)))) return path;
  return null;
};

/**
 * A file that has not changed since an older try is copied, not fetched again.
 * @param {string} address @param {string} integrity
 */
const findCopy = async (address, integrity) => {
  for (const name of await ours()) {
    const hit = await (await caches.open(name)).match(address);
    if (hit?.headers.get("x-integrity") === integrity) return hit;
  }
  return null;
};

/** @param {string} address @param {string} integrity */
const fetchWhole = async (address, integrity) => {
  const request = { integrity, cache: "no-cache", credentials: "same-origin" };
  const response = await fetch(new Request(address, /** @type {RequestInit} */ (request)));
  if (!response.ok || response.redirected) throw new Error(`${address}: ${response.status}`);
  const headers = new Headers(response.headers);
  headers.set("x-integrity", integrity);
  headers.delete("content-encoding");
  headers.delete("content-length");
  return new Response(await response.arrayBuffer(), { headers });
};

/**
 * @typedef {{ to: string, files: Array<[string, number]>, turns: number[][] }} PatchHead
 * the version it leads to; the files it makes, and their lengths; for each turn how many bytes are
 * much as before, how many are new, and how far to leap in what was before
 */

/** @param {string} version @returns {Promise<{ head: PatchHead, body: Uint8Array }>} */
const fetchPatch = async (version) => {
  const address = addressOf(`patches/${version}.patch`);
  const answer = await fetch(address, { cache: "no-cache", credentials: "same-origin" });
  if (!answer.ok || !answer.body) throw new Error(`${address}: ${answer.status}`);
  const opened = answer.body.pipeThrough(new DecompressionStream("gzip"));
  const bytes = await new Response(opened).arrayBuffer();
  const start = 4 + new DataView(bytes).getUint32(0);
  const head = new TextDecoder().decode(new Uint8Array(bytes, 4, start - 4));
  return { head: JSON.parse(head), body: new Uint8Array(bytes, start) };
};

/**
 * As bsdiff has it: bytes of before, to each of which one of the patch is added, and between them
 * new ones, which stand in the patch after those.
 * @param {Uint8Array} before @param {PatchHead} head @param {Uint8Array} body
 */
const applyPatch = (before, { files, turns: [alike = [], fresh = [], leaps = []] }, body) => {
  const after = new Uint8Array(files.reduce((sum, [, length]) => sum + length, 0));
  let [from, to, added] = [0, 0, 0];
  let own = alike.reduce((sum, length) => sum + length, 0);
  for (const [turn, length] of alike.entries()) {
    for (const end = to + length; to < end; to++) {
      after[to] = (before[from++] ?? 0) + (body[added++] ?? 0);
    }
    const bytes = body.subarray(own, own + (fresh[turn] ?? 0));
    after.set(bytes, to);
    own += bytes.length;
    to += bytes.length;
    from += leaps[turn] ?? 0;
  }
  return after;
};

/** The newest version that is kept whole. */
const findNewest = async () => {
  for (const name of (await ours()).reverse()) {
    const cache = await openSealed(name);
    if (cache) return { cache, version: name.slice(PREFIX.length).split("|")[0] ?? "" };
  }
  return null;
};

/**
 * What patches make of the files that are kept, by path; each bears the head lines of before.
 * @returns {Promise<Map<string, Response>>}
 */
const climb = async () => {
  const made = new Map();
  const newest = await findNewest();
  let version = newest?.version ?? VERSION;
  for (let left = MOST_PATCHES; version !== VERSION; left--) {
    if (!left) throw new Error("too far back");
    const { head, body } = await fetchPatch(version);
    const olds = await Promise.all(
      head.files.map(async ([path]) => made.get(path) ?? newest?.cache.match(addressOf(path))),
    );
    const blobs = await Promise.all(olds.map((old) => old.clone().blob()));
    const after = applyPatch(
      new Uint8Array(await new Blob(blobs).arrayBuffer()),
      head,
      body,
    );
    let start = 0;
    for (const [at, [path, length]] of head.files.entries()) {
      const bytes = after.slice(start, (start += length));
      made.set(path, new Response(bytes, { headers: olds[at].headers }));
    }
    version = head.to;
  }
  return made;
};

/** @param {ArrayBuffer} bytes */
const hashOf = async (bytes) => {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return `sha256-${btoa(String.fromCharCode(...digest))}`;
};

/** @param {Response | undefined} patched @param {string} integrity */
const checkPatched = async (patched, integrity) => {
  const bytes = await patched?.arrayBuffer();
  if (!patched || !bytes || (await hashOf(bytes)) !== integrity) return null;
  const headers = new Headers(patched.headers);
  headers.set("x-integrity", integrity);
  return new Response(bytes, { headers });
};

/**
 * @param {Cache} cache @param {[string, string]} file
 * @param {Map<string, Response>} patched
 */
const putFile = async (cache, [path, integrity], patched) => {
  const address = addressOf(path);
  const kept =
    (await findCopy(address, integrity)) ?? (await checkPatched(patched.get(path), integrity));
  const whole = kept ?? (await fetchWhole(address, integrity));
  const headers = new Headers(whole.headers);
  // A page's own rules do not bind its worker; these do.
  if (address === WORKER) headers.set("content-security-policy", WORKER_RULES);
  await cache.put(address, new Response(await whole.arrayBuffer(), { headers }));
};

const clearUnsealed = async () => {
  const names = [];
  for (const name of await ours()) if (!(await openSealed(name))) names.push(name);
  // The newest broken try keeps its files for copying: a bad signal need not start from nothing.
  for (const name of names.slice(0, -1)) await caches.delete(name);
};

/** @param {Cache} cache */
const fill = async (cache) => {
  const queue = [...FILES];
  // A patch that does not come, or fits not, is no reason to give up: the whole may come.
  const patched = await climb().catch(() => new Map());
  const lane = async () => {
    for (let file = queue.shift(); file; file = queue.shift()) await putFile(cache, file, patched);
  };
  const stop = (/** @type {unknown} */ error) => {
    queue.length = 0;
    throw error;
  };
  // All lanes have ended before this try is given up: one that still looks for copies would make
  // the cache anew that is taken away.
  const lanes = [lane(), lane(), lane()].map((each) => each.catch(stop));
  for (const ended of await Promise.allSettled(lanes)) {
    if (ended.status === "rejected") throw ended.reason;
  }
  const lost = await findLost(cache);
  if (lost) throw new Error(`lost ${lost}`);
  await cache.put(MARK, Response.json({ version: VERSION }));
};

const install = async () => {
  await clearUnsealed();
  const name = `${PREFIX}${VERSION}|${Date.now().toString(36)}`;
  try {
    await fill(await caches.open(name));
  } catch (error) {
    // What is left of this try must not take the room that jobs need.
    if (error instanceof DOMException && error.name === "QuotaExceededError") {
      await caches.delete(name);
    }
    throw error;
  }
};

/**
 * Whether everything is kept, looked up anew. What the device has thrown away is fetched again;
 * where that fails the page is served from the network alone, so versions are never mixed.
 */
const checkWhole = async () => {
  sealed = null;
  const cache = await open();
  if (cache && !(await findLost(cache))) return true;
  for (const name of await ours()) {
    if (name.startsWith(`${PREFIX}${VERSION}|`)) await (await caches.open(name)).delete(MARK);
  }
  sealed = null;
  return install().then(
    () => true,
    () => false,
  );
};
/** @type {Promise<boolean> | null} */
let checking = null;
const isWhole = () => (checking ??= checkWhole().finally(() => (checking = null)));

const activate = async () => {
  const keep = [];
  for (const name of await ours()) {
    if (name.startsWith(`${PREFIX}${VERSION}|`) && (await openSealed(name))) keep.push(name);
  }
  for (const name of await ours()) if (name !== keep.at(-1)) await caches.delete(name);
  sealed = null;
  await self.clients.claim();
};

/** @param {Cache} cache @param {string} address @param {boolean} isPage */
const findHit = async (cache, address, isPage) =>
  (await cache.match(address)) ?? (isPage ? cache.match(BASE) : undefined);

/** @param {Request} request */
const answer = async (request) => {
  const { origin, pathname } = new URL(request.url);
  const address = origin + pathname;
  const cache = await open();
  const hit = cache && (await findHit(cache, address, request.mode === "navigate"));
  if (hit) return hit;
  const kept = FILES.find(([path]) => addressOf(path) === address);
  // A kept file that is gone may be fetched only as it was: another version of it would be
  // mixed into this one.
  return cache && kept ? fetchWhole(address, kept[1]) : fetch(request);
};

/**
 * What another program shares comes as a POST, which no static server answers. It is laid aside
 * for the page, and the page is opened to look at it: nothing is taken in here.
 */
const SHARED = new URL("share", BASE).href;
const ASIDE = `rungline-shared|${new URL(BASE).pathname}`;
const MOST_SHARED_BYTES = 8_000_000;

/** @param {Request} request @returns {Promise<"came" | "large">} */
const layAside = async (request) => {
  const form = await request.formData();
  // A form sends a nameless empty file where none was chosen.
  const files = form
    .getAll("file")
    .flatMap((each) => (each instanceof File && each.name ? [each] : []));
  if (files.reduce((sum, { size }) => sum + size, 0) > MOST_SHARED_BYTES) return "large";
  await caches.delete(ASIDE);
  const aside = await caches.open(ASIDE);
  for (const [at, file] of files.entries()) {
    const headers = { "x-name": encodeURIComponent(file.name) };
    await aside.put(`${SHARED}/${at}`, new Response(file, { headers }));
  }
  const text = form.get("url") || form.get("text");
  if (text && !files.length) await aside.put(`${SHARED}/text`, new Response(text));
  return "came";
};

/** @param {Request} request */
const receive = async (request) => {
  // A form that is none, or a device without room: the page says that nothing came.
  const how = await layAside(request).catch(() => "lost");
  return Response.redirect(`${BASE}?shared=${how}`, 303);
};

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => {
  const [port] = event.ports;
  if (event.data === "SKIP_WAITING") self.skipWaiting();
  if (event.data === "SEALED") {
    event.waitUntil(isWhole().then((whole) => port?.postMessage(whole)));
  }
});
self.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(BASE)) event.respondWith(answer(event.request));
  if (method === "POST" && url === SHARED) event.respondWith(receive(event.request));
});
