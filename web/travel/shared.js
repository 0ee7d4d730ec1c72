/** What another program shared with the installed app: the service worker laid it aside. */

const ASIDE = `rungline-shared|${new URL("./", location.href).pathname}`;
const HOW = "shared";

/** @typedef {{files: File[], text: string | null, problem: "large" | "lost" | null}} Shared */

/** @param {Cache} aside @param {Request} request */
const readAside = async (aside, request) => {
  const response = await aside.match(request);
  const name = response?.headers.get("x-name");
  const body = (await response?.blob()) ?? new Blob();
  return name == null ? { text: await body.text() } : { file: new File([body], decodeURIComponent(name)) };
};

/** @returns {Promise<Shared>} */
const collect = async () => {
  const aside = await caches.open(ASIDE);
  const found = [];
  for (const request of await aside.keys()) found.push(await readAside(aside, request));
  await caches.delete(ASIDE);
  const files = found.flatMap(({ file }) => (file ? [file] : []));
  const text = found.find((each) => each.text)?.text ?? null;
  return { files, text, problem: files.length || text ? null : "lost" };
};

/**
 * Whether this page was opened by sharing; the address is cleared of it.
 * @returns {Promise<Shared> | null}
 */
export const takeShared = () => {
  const how = new URLSearchParams(location.search).get(HOW);
  if (how === null) return null;
  history.replaceState(null, "", `${location.pathname}#/open`);
  if (how === "large") return Promise.resolve({ files: [], text: null, problem: how });
  return collect();
};
