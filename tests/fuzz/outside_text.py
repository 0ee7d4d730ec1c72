"""A coverage-guided fuzzer on everything that takes text from outside.

    python -m tests.fuzz.outside_text TARGET [what the fuzzer itself takes, -runs=1000 …]

Anything but an answer or a plain problem is a crash, and the fuzzer writes the bytes that
led to it. `build.py bench fuzz` runs all targets; Linux only, by the lock `fuzz`.
"""

import importlib
import json
import sys
from collections.abc import Callable
from typing import Any


def demand_words(problem: dict[str, Any] | None) -> None:
    """A problem has a code of its own, and words."""
    if problem is not None and (problem["code"] == "unexpected" or not problem["words"]):
        raise AssertionError(problem)


def load_targets() -> dict[str, Callable[[bytes], None]]:
    """What can be fuzzed, by name. Imported here, so that the fuzzer can watch the branches."""
    from pycore.carry.envelope import wrap
    from pycore.carry.link import read_link
    from pycore.carry.saved import open_all, open_saved
    from pycore.door import handle
    from pycore.ground.problems import Problem
    from tests.bench.hostile import squeeze
    from tests.fuzz.requests import request_from

    def is_plain(read: Callable[[str], object], text: str) -> None:
        try:
            read(text)
        except Problem:
            return

    def link_in_a_good_cover(some: bytes) -> None:
        is_plain(read_link, wrap(1, squeeze(some[:60_000])))

    def answered(text: str) -> None:
        demand_words(json.loads(handle(text)).get("problem"))

    return {
        "link": lambda some: is_plain(read_link, some.decode("utf-8", "replace")),
        "link_inside": link_in_a_good_cover,
        "saved": lambda some: is_plain(open_saved, some.decode("utf-8", "replace")),
        "all_saved": lambda some: is_plain(open_all, some.decode("utf-8", "replace")),
        "door": lambda some: answered(some.decode("utf-8", "replace")),
        "asks": lambda some: answered(request_from(some)),
    }


def main(words: list[str]) -> None:
    """Fuzz one target until told to stop."""
    atheris: Any = importlib.import_module("atheris")
    with atheris.instrument_imports(include=["pycore"]):
        targets = load_targets()
    target = targets[words[1]]
    atheris.Setup([words[0], *words[2:]], target)
    atheris.Fuzz()


if __name__ == "__main__":
    main(sys.argv)
