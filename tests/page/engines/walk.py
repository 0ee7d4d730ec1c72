"""Walks through all of a job in any engine: every screen, every form, every working, on paper.

The page is worked from inside by its own controls, so the walk is the same in every engine.
After each touch everything a person can read is gathered, and everything that should not be
there is looked for.
"""

import json
from typing import Any, NamedTuple

from tests.page.engines.driver import Driver, wait_until

# A name is put on the page once; it survives every change of screen.
HELPERS = r"""(() => {
  globalThis.violations = [];
  addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI }) =>
    violations.push(`${violatedDirective} ${blockedURI}`));
  const asked = (kind) => () => { violations.push(kind); return null; };
  Object.assign(globalThis, { alert: asked("alert"), confirm: asked("confirm"),
    prompt: asked("prompt"), open: asked("open") });
  const wait = (time) => new Promise((resolve) => setTimeout(resolve, time));
  // Everything the page waits for: the engine, its storage, a file, the news of an address.
  let waits = 0;
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (...which) {
    const begun = transaction.apply(this, which);
    waits += 1;
    const end = () => { waits -= 1; };
    // It ends once, in one way or the other.
    begun.addEventListener("complete", end);
    begun.addEventListener("abort", end);
    return begun;
  };
  const { postMessage } = Worker.prototype;
  Worker.prototype.postMessage = function (...question) {
    waits += 1;
    const heed = ({ data: { answer, broken } }) => {
      if (!answer && !broken) return;
      waits -= 1;
      this.removeEventListener("message", heed);
    };
    this.addEventListener("message", heed);
    postMessage.apply(this, question);
  };
  const { fetch } = globalThis;
  globalThis.fetch = (...asked) => {
    waits += 1;
    return fetch(...asked).finally(() => { waits -= 1; });
  };
  let told = location.hash;
  addEventListener("hashchange", () => { told = location.hash; });
  const busy = () => waits || told !== location.hash ||
    document.querySelector(".top-progress, [aria-busy=true]");
  const settle = async () => {
    const begun = Date.now();
    // What comes of an answer is asked for and painted in its turn, or in one of the next.
    for (let still = 0; still < 3 && Date.now() - begun < 15_000; still += 1) {
      await wait(0);
      if (busy()) still = -1;
    }
  };
  // What the sheet of a browser and a screen reader would tell, beside the text itself.
  const TOLD = ["aria-label", "title", "placeholder", "alt", "value", "aria-description"];
  const MARK = /q\d+q/;
  const gather = () => {
    const told = [document.title];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) told.push(texts.currentNode.data);
    for (const element of document.querySelectorAll("*")) {
      for (const name of TOLD) told.push(element.getAttribute(name) ?? "");
      if ("value" in element) told.push(String(element.value));
    }
    return [...new Set(told.filter((each) => MARK.test(each)))];
  };
  const OURS = new Set(["link", "script", "meta", "style"]);
  const faults = () => {
    const found = [...violations];
    if (globalThis.harmed !== undefined) found.push(`harmed ${globalThis.harmed}`);
    if ({}.harmed !== undefined || [].harmed !== undefined) found.push("a prototype was changed");
    for (const element of document.querySelectorAll("*")) {
      const name = element.localName;
      const inHead = element.parentElement === document.head && OURS.has(name);
      if (["img", "iframe", "object", "embed", "base"].includes(name)) found.push(name);
      if (name === "script" && !inHead) found.push(`a script: ${element.textContent}`);
      for (const { name: its, value } of element.attributes) {
        if (/^on/i.test(its) || its === "srcdoc") found.push(`${name} ${its}`);
        if (/^(href|src|action|formaction|xlink:href)$/.test(its)
          && /^\s*(javascript|data|vbscript):/i.test(value)) found.push(`${name} ${its}=${value}`);
      }
    }
    return found;
  };
  const look = async () => { await settle(); return { texts: gather(), faults: faults() }; };
  const keyOf = (element) => `${element.localName} ${JSON.stringify(element.dataset)}`;
  const controls = () => [...document.querySelectorAll("main [data-act], .bench [data-act]")]
    .filter((element) => !element.disabled);
  const some = (acts, most) => acts.flatMap((act) =>
    controls().filter((element) => element.dataset.act === act).slice(0, most[act] ?? most.others));
  const escape = () => document.querySelector("#app")
    .dispatchEvent(new KeyboardEvent("keydown", { key: "Escape", bubbles: true }));
  globalThis.walk = {
    look,
    async to(hash) { location.hash = hash; return look(); },
    keys: (acts, most) => [...new Set(some(acts, most).map(keyOf))],
    async press(key) {
      const element = controls().find((each) => keyOf(each) === key);
      element?.click();
      return element ? look() : null;
    },
    paper(media) {
      const own = document.querySelector("link[href$='print.css']");
      own.media = media;
    },
    async close() { escape(); await settle(); },
    async fill(selector, text) {
      const field = document.querySelector(selector);
      field.value = text;
      field.dispatchEvent(new Event("input", { bubbles: true }));
      await settle();
    },
    click(words) {
      [...document.querySelectorAll("button, a")]
        .find(({ textContent }) => textContent.trim() === words)?.click();
    },
  };
})()"""
# Touches that open something to read and change nothing, by what they open into.
OPENERS = ("form.open", "working.open", "thing.pick", "findings.show", "meter.explain")
# Forms and things each show fields of their own; what numbers open into is alike.
MOST_OF_A_KIND = {"form.open": 12, "thing.pick": 12, "others": 2}
THEN = ("ladder.swap",)


class Seen(NamedTuple):
    """The texts with a mark that could be read after a touch, and what should not be there."""

    after: str
    texts: list[str]
    faults: list[str]


class Walker:
    """One tab of an engine, and everything that was seen in it."""

    def __init__(self, engine: Driver) -> None:
        self._engine = engine
        self.seen: list[Seen] = []

    def begin(self, address: str) -> None:
        """Load the page and make it ready for the walk."""
        self._engine.go("about:blank")
        self._engine.go(address)
        wait_until(lambda: self._engine.evaluate("Boolean(document.querySelector('h1'))"),
                   what="the page")  # fmt: skip
        self._engine.evaluate(f"void {HELPERS}")

    def go(self, hash_part: str) -> None:
        """Go to a screen without loading the page."""
        self._note(hash_part, f"walk.to({json.dumps(hash_part)})")

    def look(self, after: str) -> None:
        """Gather what is there now."""
        self._note(after, "walk.look()")

    def click(self, words: str) -> None:
        """Touch what carries these words."""
        self._note(words, f"(walk.click({json.dumps(words)}), walk.look())")

    def fill(self, selector: str, text: str) -> None:
        """Type into a field."""
        self._engine.evaluate(f"walk.fill({json.dumps(selector)}, {json.dumps(text)})")

    def wait_for(self, selector: str) -> None:
        """Wait until such a thing is there."""
        ask = f"Boolean(document.querySelector({json.dumps(selector)}))"
        wait_until(lambda: self._engine.evaluate(ask), what=selector)

    def open_everything(self, hash_part: str) -> None:
        """Go to a screen and open, one after the other, everything it has to open."""
        self.go(hash_part)
        pressed: set[str] = set()
        for key in self._keys(OPENERS):
            pressed.add(key)
            self._press(key, at=hash_part)
            is_open = True
            for inner in self._keys(OPENERS + THEN):
                if inner in pressed:
                    continue
                if not is_open:
                    is_open = self._press(key, at=hash_part)
                if self._press(inner, at=hash_part):
                    pressed.add(inner)
                    self._engine.evaluate("walk.close()")
                    is_open = False
            self._engine.evaluate("walk.close()")

    def open_one(self, act: str, holding: str = "") -> None:
        """Open what the first control of this act opens whose data hold these words."""
        key = next(key for key in self._keys((act,)) if holding in key)
        self._press(key, at=act)

    def print(self, after: str) -> None:
        """Set the page on paper, at least by the rules for paper, and look at it again."""
        paper = self._engine.print()
        assert paper is None or paper.startswith(b"%PDF"), after
        self._engine.evaluate("walk.paper('all')")
        self.look(after)
        self._engine.evaluate("walk.paper('print')")

    def _keys(self, acts: tuple[str, ...]) -> list[str]:
        return list(
            self._engine.evaluate(f"walk.keys({json.dumps(acts)}, {json.dumps(MOST_OF_A_KIND)})")
        )

    def _press(self, key: str, *, at: str) -> bool:
        return self._note(f"{at} {key}", f"walk.press({json.dumps(key)})")

    def _note(self, after: str, script: str) -> bool:
        found: Any = self._engine.evaluate(script)
        if found is not None:
            self.seen.append(Seen(after, found["texts"], found["faults"]))
        return found is not None
