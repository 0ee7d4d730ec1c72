/** What sw.js finds around it. The build fills the blank; the rest is the browser's own. */

declare const __FILES__: Array<[string, string]>;

interface WorkerGlobalScope {
  readonly clients: Clients;
  skipWaiting(): Promise<void>;
  addEventListener(
    type: "install" | "activate",
    listener: (event: ExtendableEvent) => void,
  ): void;
  addEventListener(type: "fetch", listener: (event: FetchEvent) => void): void;
  addEventListener(type: "message", listener: (event: ExtendableMessageEvent) => void): void;
}
