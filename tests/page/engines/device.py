"""The built app in one engine, on a page that does nothing by itself: starts and copies by hand."""

import json
import shutil
from pathlib import Path
from typing import Any

from tests.page.engines.driver import Driver, wait_until
from tests.page.engines.stand import BLANK, Fault, Stand, copy_app
from web.tools.places import WEB

# In the app they are joined with what starts an engine at once.
SINGLE_SCRIPTS = ("trust.js", "door.js")
# What a trap of the interpreter is called; seen once, in WebKitGTK.
TRAP = "RuntimeError"
# Starts an engine, asks it one thing and ends it; or ends it at a stage, as a crash would.
START = """import("./trust.js").then(({ scriptAddress }) => new Promise((resolve) => {
  const options = { type: "module", name: "NAME" };
  const worker = new Worker(scriptAddress("./worker.js"), options);
  const said = { stages: [] };
  const end = () => { worker.terminate(); resolve(said); };
  worker.onerror = ({ message }) => { said.failed = message; end(); };
  worker.onmessage = async ({ data: { stage, way, answer, failed, cause } }) => {
    if (stage) said.stages.push(stage);
    if (stage === "KILL") end();
    if (failed) { Object.assign(said, { failed, cause }); end(); }
    if (way && !said.way) { said.way = way; worker.postMessage(JSON.stringify(QUESTION)); }
    if (answer) { said.answer = JSON.parse(answer).body; await (LATER); end(); }
  };
}))"""
SHELF = """new Promise((resolve, reject) => {
  const place = new URL("./", location.href).pathname;
  const opening = indexedDB.open(`rungline-engine ${place}`);
  // Made here, it would lie empty under the name that the engine wants, and bar it for good.
  opening.onupgradeneeded = () => opening.transaction.abort();
  opening.onerror = () => reject(new Error(`no shelf: ${opening.error}`));
  opening.onsuccess = async () => {
    const base = opening.result;
    const ask = (request) => new Promise((done, fail) => {
      request.onsuccess = () => done(request.result);
      request.onerror = () => fail(request.error);
    });
    const read = (store, key) => ask(base.transaction(store).objectStore(store).get(key));
    const write = (store, key, value) =>
      ask(base.transaction(store, "readwrite").objectStore(store).put(value, key));
    const act = async () => { ACT };
    act().then(resolve, reject).finally(() => base.close());
  };
})"""
HAS_COPY = 'return Boolean(await read("copy", "label"));'
# Not for ever: a device that may keep no copy never has one. An engine that is about to start has
# not made its shelf yet.
UNTIL_KEPT = f"""(async () => {{
  const isKept = () => {SHELF.replace("ACT", HAS_COPY)}.catch((error) => {{
    if (error.message.startsWith("no shelf")) return false;
    throw error;
  }});
  for (let turn = 0; !(await isKept()); turn += 1) {{
    if (turn === 900) throw new Error("no copy of the engine was kept in 90 s");
    await new Promise((next) => setTimeout(next, 100));
  }}
}})()"""
SET_ASIDE = """globalThis.aside = {
  label: await read("copy", "label"), bytes: await read("copy", "bytes"),
};"""
LAY = """const { label, bytes } = globalThis.aside;
await write("copy", "label", label);
await write("copy", "bytes", bytes);
"""
NOBODY_WAKES = """navigator.locks.query().then(({ held }) =>
    held.every(({ name }) => !name.startsWith("rungline-engine")))"""
FRESH_NOTES = 'await write("notes", "notes", { starts: 5 });'
# A clock that goes fast for the one wait that a silent death costs.
DOOR = """import("./trust.js").then(async ({ scriptAddress }) => {
  const { openDoor } = await import("./door.js");
  const wait = globalThis.setTimeout;
  globalThis.setTimeout = (act, time, ...rest) => wait(act, time > 15_000 ? 1500 : time, ...rest);
  let engine;
  let starts = 0;
  const start = () => {
    starts += 1;
    return (engine = new Worker(scriptAddress("./worker.js"), { type: "module", name: "again" }));
  };
  const ready = new Promise((done) => { globalThis.whenReady = done; });
  const onStage = ({ ready }) => ready && globalThis.whenReady();
  const door = openDoor({ start, onStage, manner: () => ({}), isKept: () => false });
  await ready;
  const asking = door.ask("version", {});
  engine.terminate();
  const body = await asking;
  globalThis.setTimeout = wait;
  engine.terminate();
  return { ...body, starts };
})"""

# A shelf that nobody of this build made: of an older try that broke off, or of a later build.
STRANGE = """new Promise((done, fail) => {
  const name = `rungline-engine ${new URL("./", location.href).pathname}`;
  const making = indexedDB.open(name, VERSION);
  making.onerror = () => fail(making.error);
  making.onsuccess = () => { making.result.close(); done(); };
})"""
# Whoever wants to open the shelf waits for ever: it is to be removed, and nobody lets go of it.
STUCK = """new Promise((done, fail) => {
  const name = `rungline-engine ${new URL("./", location.href).pathname}`;
  const opening = indexedDB.open(name, 1);
  opening.onerror = () => fail(opening.error);
  opening.onsuccess = () => {
    globalThis.held = opening.result;
    indexedDB.deleteDatabase(name).onblocked = () => done();
  };
})"""
# The clock by which the page's door ends an engine goes off by hand, at once or never.
WAKE_THROUGH_DOOR = """import("./trust.js").then(async ({ scriptAddress }) => {
  const { openDoor } = await import("./door.js");
  const { setTimeout, clearTimeout } = globalThis;
  const running = new Map();
  globalThis.setTimeout = (act, time, ...rest) => {
    const isOfDoor = time > 15_000 && time < 25_000;  // a driver's own clocks are longer
    const number = setTimeout(isOfDoor ? () => {} : act, time, ...rest);
    if (isOfDoor) running.set(number, act);
    return number;
  };
  globalThis.clearTimeout = (number) => { running.delete(number); clearTimeout(number); };
  const started = { starts: 0, stages: [] };
  globalThis.started = started;
  globalThis.goOff = () => { for (const act of [...running.values()]) act(); };
  let worker;
  const start = () => {
    started.starts += 1;
    worker = new Worker(scriptAddress("./worker.js"), { type: "module", name: "" });
    return worker;
  };
  const onStage = ({ stage, ready, way, failed }) => {
    if (stage) started.stages.push(stage);
    if (!ready && !failed) return;
    Object.assign(started, { way, failed, ended: true });
    Object.assign(globalThis, { setTimeout, clearTimeout });
    worker.terminate();
  };
  openDoor({ start, onStage, manner: () => ({}), isKept: () => false });
})"""


class Device:
    """One engine at the built app."""

    def __init__(self, engine: Driver, stand: Stand, dist: Path) -> None:
        self.engine, self.stand = engine, stand
        self.ways: list[str] = []
        copy_app(dist, stand.folder / "a")
        for name in SINGLE_SCRIPTS:
            shutil.copyfile(WEB / name, stand.folder / "a" / name)
        engine.go(stand.address_of("a") + BLANK)

    def start(
        self, *, name: str = "", ask: str = "version", later: str = "null", kill: str = ""
    ) -> dict[str, Any]:
        """Start an engine and ask it one thing; unless it is killed, demand an answer."""
        script = _write_start(name=name, ask=ask, later=later, kill=kill)
        said = self.engine.evaluate(script)
        if said.get("failed", "").startswith(TRAP):
            # The app starts once more by itself (`web/door.js`), and so does this.
            said = self.engine.evaluate(script)
        assert "failed" not in said, said["failed"]
        assert kill or said["answer"]
        return dict(said)

    def start_in_vain(self, name: str, fault: Fault) -> dict[str, Any]:
        """Start an engine while something is wrong with one of its files."""
        self.stand.faults[name] = fault
        said = self.engine.evaluate(_write_start(name="", ask="version", later="null", kill=""))
        self.stand.faults.clear()
        wait_until(lambda: self.engine.evaluate(NOBODY_WAKES), what="the failed engine to let go")
        return dict(said)

    def start_two(self) -> list[dict[str, Any]]:
        """Start two engines in the same moment, when no earlier one holds on to the copy."""
        wait_until(lambda: self.engine.evaluate(NOBODY_WAKES), what="earlier engines to let go")
        one = _write_start(name="", ask="version", later="null", kill="")
        return list(self.engine.evaluate(f"Promise.all([{one}, {one}])"))

    def start_and_kill(self, *, at: str, name: str = "") -> None:
        """End an engine while it starts."""
        self.start(name=name, kill=at)
        wait_until(lambda: self.engine.evaluate(NOBODY_WAKES), what="the dead engine to let go")

    def change_shelf(self, act: str) -> Any:
        """Look at the shelf of the copy, or change it behind the engine's back."""
        return self.engine.evaluate(SHELF.replace("ACT", act))

    def read_notes(self) -> dict[str, Any]:
        """Read what the device has noted about copies."""
        return dict(self.change_shelf('return read("notes", "notes");'))

    def has_copy(self) -> bool:
        """Say whether a copy lies on the shelf."""
        return bool(self.change_shelf(HAS_COPY))

    def make_copy(self) -> None:
        """Start until a copy is taken, wait until it is kept, and set one aside in the page."""
        while not self.ways or self.ways[-1] == "plain":
            wait = f"said.way === 'making' && {UNTIL_KEPT}"
            self.ways.append(self.start(later=wait)["way"])
        self.change_shelf(SET_ASIDE)

    def lay_copy(self, damage: str = "") -> None:
        """Put the copy on the shelf again, damaged or whole, with fresh notes."""
        self.change_shelf(LAY + damage + FRESH_NOTES)

    def move(self, name: str) -> None:
        """Go on at the same app in another place, where nothing has been kept yet."""
        shutil.copytree(self.stand.folder / "a", self.stand.folder / name)
        self.engine.go(self.stand.address_of(name) + BLANK)

    def lay_strange_shelf(self, *, version: int) -> None:
        """Put a shelf without any store where the engine's will be."""
        self.engine.evaluate(STRANGE.replace("VERSION", str(version)))

    def block_shelf(self) -> None:
        """Let nobody open the shelf."""
        self.engine.evaluate(STUCK)

    def let_go_of_shelf(self) -> None:
        """Let everybody open the shelf again."""
        self.engine.evaluate("void held.close()")

    def wake_while_a_file_lingers(self, name: str) -> dict[str, Any]:
        """Wake through the page's own door; its clock goes off while one file is on its way."""
        self.stand.faults[name] = "silent"
        self.engine.evaluate(f"{WAKE_THROUGH_DOOR}.then(() => null)")
        wakes = "started.stages.includes('wake')"
        wait_until(lambda: self.engine.evaluate(wakes), what="the copy to be woken")
        self.engine.evaluate("void goOff()")
        self.stand.faults.clear()
        wait_until(lambda: self.engine.evaluate("started.ended"), what="the engine to start")
        return dict(self.engine.evaluate("started"))

    def ask_through_door_and_kill(self) -> dict[str, Any]:
        """Ask through the page's own door and end the engine before it can answer."""
        return dict(self.engine.evaluate(DOOR))


def _write_start(*, name: str, ask: str, later: str, kill: str) -> str:
    question = json.dumps({"n": 1, "ask": ask, "manner": {}, "body": {}})
    blanks = {"NAME": name, "QUESTION": question, "LATER": later, "KILL": kill or "never"}
    script = START
    for blank, text in blanks.items():
        script = script.replace(blank, text)
    return script
