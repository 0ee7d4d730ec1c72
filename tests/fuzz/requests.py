"""Requests drawn from bytes: a true one of any ask, with a few of its values changed.

Bytes thrown at the text of a request almost never leave it readable; here they choose what is
changed, so that the fuzzer gets past the models and into the sums behind them.
"""

from collections.abc import Iterator
from typing import Any

from pycore.asks.table import ASKS
from tests.door.examples import FULL, body_of, request_of

NAMES = sorted(ASKS)
MOST_CHANGES = 6
GONE = object()
VALUES: tuple[Any, ...] = (
    GONE, None, True, False, 0, -1, 1, 2, 0.0, 1e-12, 1e-3, 0.5, 0.707, 3.0, 4.0, 5.0, 8.0, 25.0,
    70.0, 70.7, 71.0, 100.0, 1e4, 1e6, 1e12, -0.5, -6.0, -60.0, "", "0", "7,5", "1,500", "20 x 4 m",
    "1.2 ohm / 50 m", "30 / 15 / 8 ohm", "2026-02-30", "2026-11-25", "ft", ",", "set", "override",
    "pad", "autotransformer", "delivered", "copper_clad_aluminium", "loudspeaker", "attenuator",
    "existing", "junction", "silent", "loud", "plays", "dc_ohm", "z_1k_ohm", "volts", "back",
    [], {},
)  # fmt: skip


def _ids(value: object) -> Iterator[str]:
    if isinstance(value, dict):
        if isinstance(value.get("id"), str):
            yield value["id"]
        for one in value.values():
            yield from _ids(one)
    elif isinstance(value, list):
        for one in value:
            yield from _ids(one)


PUT_IN = (*VALUES, *dict.fromkeys(_ids(FULL)))


def _paths(value: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    parts = value.items() if isinstance(value, dict) else enumerate(value)
    for key, one in parts:
        yield (*path, key)
        if isinstance(one, dict | list):
            yield from _paths(one, (*path, key))


def _put(value: Any, path: tuple[str | int, ...], new: object) -> Any:
    """A copy with one value changed or taken out."""
    head, rest = path[0], path[1:]
    copy: Any = dict(value) if isinstance(value, dict) else list(value)
    if rest:
        copy[head] = _put(value[head], rest, new)
    elif new is GONE:
        del copy[head]
    else:
        copy[head] = new
    return copy


def request_from(some: bytes) -> str:
    """The request that these bytes choose: one for the ask, then three for each change."""
    name = NAMES[some[0] % len(NAMES)] if some else NAMES[0]
    body = body_of(name)
    for at in range(1, min(len(some) - 2, 3 * MOST_CHANGES), 3):
        paths = list(_paths(body))
        if not paths:
            break
        where = int.from_bytes(some[at : at + 2]) % len(paths)
        body = _put(body, paths[where], PUT_IN[some[at + 2] % len(PUT_IN)])
    return request_of(name, body)
