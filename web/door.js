/**
 * The way to the engine: questions with a number, answers by number. One question is with the
 * engine at a time, so a time limit means something. An engine that breaks or hangs is ended
 * and started again, and the question it had is asked once more.
 */

/** @typedef {import("./state").Problem} Problem */
/** @typedef {{n: number, ask: string, text: string, latest: string, tries: number,
 *   resolve: (body: any) => void, reject: (reason: unknown) => void}} Question */
/** @typedef {{postMessage(text: string): void, terminate(): void,
 *   onmessage: ((event: MessageEvent) => void) | null,
 *   onerror: ((event: ErrorEvent) => void) | null}} Engine */
/** @typedef {import("./failing.js").Cause} Cause */
/** @typedef {{stage?: string, bytes?: number, failed?: string, broken?: string,
 *   cause?: Cause, file?: string, ready?: boolean, loading?: boolean, way?: string, build?: string, answer?: string}} Message */

const ANSWER_WITHIN_MILLISECONDS = 20_000;
// Longer than any sound start is without a word.
const WORD_WITHIN_MILLISECONDS = 60_000;
const MOST_SILENCES = 1;
const MOST_TRIES = 2;
/** How a fault of the interpreter itself begins; a missing file or an old browser says otherwise. */
const TRAP = "RuntimeError";

/** An answer that is a problem: something the person can read and mend. */
export class Refused extends Error {
  /** @param {Problem} problem */
  constructor(problem) {
    super(problem.code);
    this.problem = problem;
  }
}

/** A question that was overtaken by a newer one of the same kind, and needs no answer now. */
export class Overtaken extends Error {}

/** The engine could not answer at all, even after it was started again. */
export class NoAnswer extends Error {}

/**
 * @param {{start: (again: boolean) => Engine, onStage: (message: Message) => void,
 *   manner: () => Readonly<Record<string, string>>, isKept: () => boolean}} parts
 *   `isKept`: the engine's files lie on this device, so that no start has to wait for the network
 */
export const openDoor = ({ start, onStage, manner, isKept }) => {
  /** @type {Question[]} */
  let queue = [];
  /** @type {Question | null} */
  let asked = null;
  /** @type {Engine | null} */
  let engine = null;
  let ready = false;
  let trapped = false;
  let waking = false;
  let loading = false;
  let counter = 0;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let clock;
  let silences = 0;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let silence;

  const sendNext = () => {
    if (!ready || asked || !engine) return;
    asked = queue.shift() ?? null;
    if (!asked) return;
    asked.tries += 1;
    clock = setTimeout(startAgain, ANSWER_WITHIN_MILLISECONDS);
    engine.postMessage(asked.text);
  };

  /** @param {string} text */
  const receive = (text) => {
    const { n, body, problem } = JSON.parse(text);
    if (!asked || n !== asked.n) return;
    clearTimeout(clock);
    const { resolve, reject } = asked;
    asked = null;
    if (problem) reject(new Refused(problem));
    else resolve(body);
    sendNext();
  };

  const close = () => {
    clearTimeout(clock);
    clearTimeout(silence);
    ready = waking = loading = false;
    if (engine) {
      engine.onmessage = engine.onerror = null;
      engine.terminate();
    }
    engine = null;
  };

  const startAgain = () => {
    close();
    const again = asked;
    asked = null;
    if (again && again.tries < MOST_TRIES) queue.unshift(again);
    else again?.reject(new NoAnswer(again.ask));
    onStage({ stage: "again" });
    openEngine(true);
  };

  /** @param {Message} message */
  const heed = (message) => {
    if (message.answer !== undefined) return receive(message.answer);
    if (message.broken !== undefined) return startAgain();
    if (message.failed !== undefined && !trapped && message.failed.startsWith(TRAP)) {
      // Seen once, in WebKitGTK; a new engine started soundly.
      trapped = true;
      return startAgain();
    }
    if (message.failed !== undefined) close();
    if (message.ready) ready = true;
    watchWaking(message);
    watchSilence();
    onStage(message);
    sendNext();
  };

  /**
   * An engine that is woken from a copy may hang where one that starts as ever does not. That its
   * files take long says nothing of the copy: no time counts while one of them is on its way.
   * @param {Message} message
   */
  const watchWaking = ({ stage, loading: isLoading = loading, ready: isReady }) => {
    loading = isLoading;
    if (!waking && stage !== "wake") return;
    waking = stage !== "start" && !isReady;
    clearTimeout(clock);
    if (waking && !loading) clock = setTimeout(startAgain, ANSWER_WITHIN_MILLISECONDS);
  };

  /**
   * A start whose files never come to it, though they lie here, is ended: a worker of the network
   * that changes in that moment may never answer. Once only, so that a slow device comes to its end.
   */
  const watchSilence = () => {
    clearTimeout(silence);
    if (!engine || ready || silences >= MOST_SILENCES || !isKept()) return;
    silence = setTimeout(() => {
      silences += 1;
      startAgain();
    }, WORD_WITHIN_MILLISECONDS);
  };

  const openEngine = (again = false) => {
    engine = start(again);
    watchSilence();
    engine.onmessage = (event) => heed(event.data);
    engine.onerror = (event) => {
      event.preventDefault();
      if (ready) startAgain();
      else heed({ failed: event.message ?? "worker.js" });
    };
  };
  openEngine();

  return {
    /**
     * Ask the core. Questions that share a `latest` key overtake each other: only the newest is
     * answered, so an old answer can never be painted over a new one.
     * @template {keyof import("./answers").Answers} K
     * @param {K} ask
     * @param {unknown} body
     * @param {string} [latest]
     * @returns {Promise<import("./answers").Answers[K]>}
     */
    ask(ask, body, latest = "") {
      return new Promise((resolve, reject) => {
        if (latest) queue = dropOvertaken(queue, latest);
        const n = ++counter;
        const text = JSON.stringify({ n, ask, manner: manner(), body });
        queue.push({ n, ask, text, latest, tries: 0, resolve, reject });
        sendNext();
      });
    },

    /** Start the engine once more after a failed start. */
    retry: startAgain,
  };
};

/**
 * @param {Question[]} queue
 * @param {string} latest
 */
const dropOvertaken = (queue, latest) => {
  for (const question of queue) {
    if (question.latest === latest) question.reject(new Overtaken(question.ask));
  }
  return queue.filter((question) => question.latest !== latest);
};

/** @typedef {ReturnType<typeof openDoor>} Door */
