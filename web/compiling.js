/**
 * The runtime's module, asked for and compiled from the first moment. By itself the runtime begins
 * with it only when its scripts have run, refuses it under a type that it does not know, and where
 * that fails tells nobody and waits for ever.
 */

import { BrokenOff, Missing, nameOf } from "./fetching.js";

const ADDRESS = new URL("./py/pyodide.asm.wasm", self.location.href).href;

const compile = async () => {
  const response = await fetch(ADDRESS);
  if (!response.ok) throw new Missing(nameOf(ADDRESS));
  const type = response.headers.get("content-type") ?? "";
  // On the way, while it arrives, only under its own type: so do browsers.
  return type.startsWith("application/wasm")
    ? WebAssembly.compileStreaming(response)
    : WebAssembly.compile(await response.arrayBuffer());
};

/**
 * What it fails with where the bytes cannot be compiled says so; any other fault is of the connection.
 * @param {unknown} error
 */
const explain = (error) => {
  const isOfConnection = error instanceof TypeError || error instanceof DOMException;
  throw isOfConnection ? new BrokenOff(nameOf(ADDRESS), { cause: error }) : error;
};

/**
 * Compile now, and hand it over when the runtime asks. Called before anything else is fetched.
 * @param {(error: unknown) => void} onFailed
 * @param {import("./fetching.js").Count} count
 */
export const compileEarly = (onFailed, count) => {
  const compiled = count(compile()).catch(explain);
  compiled.catch(onFailed);
  const fetchPlainly = self.fetch;
  // What the runtime asks for here is never read, so it is not fetched a second time.
  self.fetch = async (...request) =>
    String(request[0]) === ADDRESS ? new Response() : fetchPlainly(...request);
  WebAssembly.instantiateStreaming = async (_, imports) => {
    const module = await compiled;
    try {
      return { module, instance: await WebAssembly.instantiate(module, imports) };
    } catch (error) {
      onFailed(error);
      throw error;
    }
  };
};
