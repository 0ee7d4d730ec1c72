/**
 * Keeps the whole app on the device. The build fills VERSION (a hash of FILES) and FILES
 * ([path, "sha256-..."]). One cache for each try to install, sealed by a marker: a broken or
 * mixed deployment can never be served, and no browser reuses a cache it has dropped once.
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

// The core comes whole on a first visit; an update fetches the pieces of it that are new.
const CORE = "py/pycore.zip";
const PIECES_LIST = "py/pycore.json";
const PIECES_FOLDER = "py/pycore/";
// Beyond this share the whole, squeezed as one, is the smaller.
const MOST_NEW = 0.6;

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

/** @typedef {Array<[string, number]>} Pieces names and lengths, in their order */

/** @param {Response | undefined} answer @returns {Promise<Pieces>} */
const readList = async (answer) => (answer ? answer.json() : []);

/**
 * The pieces of the core that are kept from before, by their names.
 * @returns {Promise<Map<string, Blob>>}
 */
const findPieces = async () => {
  const found = new Map();
  for (const name of await ours()) {
    const cache = await caches.open(name);
    const core = await (await cache.match(addressOf(CORE)))?.blob();
    if (!core) continue;
    let start = 0;
    for (const [piece, length] of await readList(await cache.match(addressOf(PIECES_LIST)))) {
      found.set(piece, core.slice(start, (start += length)));
    }
  }
  return found;
};

/** @param {string} name */
const fetchPiece = async (name) => {
  const response = await fetch(addressOf(PIECES_FOLDER + name), { credentials: "same-origin" });
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  return response.blob();
};

/** @param {ArrayBuffer} bytes */
const hashOf = async (bytes) => {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return `sha256-${btoa(String.fromCharCode(...digest))}`;
};

/**
 * The core, put together from old pieces and new ones; null where the whole is to be fetched.
 * @param {Cache} cache the one that is being filled, the list already in it @param {string} integrity
 */
const joinCore = async (cache, integrity) => {
  const kept = await findPieces();
  const list = await readList(await cache.match(addressOf(PIECES_LIST)));
  /** @param {Pieces} pieces */
  const add = (pieces) => pieces.reduce((sum, [, length]) => sum + length, 0);
  if (add(list.filter(([name]) => !kept.has(name))) >= MOST_NEW * add(list)) return null;
  const pieces = await Promise.all(list.map(([name]) => kept.get(name) ?? fetchPiece(name)));
  const bytes = await new Blob(pieces).arrayBuffer();
  if ((await hashOf(bytes)) !== integrity) return null;
  const headers = { "content-type": "application/zip", "x-integrity": integrity };
  return new Response(bytes, { headers });
};

/** @param {Cache} cache @param {[string, string]} file */
const putFile = async (cache, [path, integrity]) => {
  const address = addressOf(path);
  const copy = await findCopy(address, integrity);
  // A piece that does not come, or is another, is no reason to give up: the whole may come.
  const joined = copy || path !== CORE ? null : await joinCore(cache, integrity).catch(() => null);
  const whole = copy ?? joined ?? (await fetchWhole(address, integrity));
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
  const list = queue.findIndex(([path]) => path === PIECES_LIST);
  // First, because the core is put together by it.
  for (const file of list < 0 ? [] : queue.splice(list, 1)) await putFile(cache, file);
  const lane = async () => {
    for (let file = queue.shift(); file; file = queue.shift()) await putFile(cache, file);
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
