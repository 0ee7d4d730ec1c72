"""Stamps: a step that has run on exactly this input is not run again."""

import hashlib
from collections.abc import Iterable
from pathlib import Path


def hash_inputs(parts: Iterable[Path | str | bytes]) -> str:
    """Hash files (by content) and texts into one short key."""
    total = hashlib.sha256()
    for part in parts:
        if isinstance(part, Path):
            content = part.read_bytes()
        else:
            content = part if isinstance(part, bytes) else part.encode()
        total.update(hashlib.sha256(content).digest())
    return total.hexdigest()[:32]


def is_done(stamp: Path, key: str) -> bool:
    """Say whether the step of this stamp was finished with this key."""
    return stamp.is_file() and stamp.read_text() == key


def mark_done(stamp: Path, key: str) -> None:
    """Note that the step of this stamp was finished with this key."""
    stamp.parent.mkdir(parents=True, exist_ok=True)
    stamp.write_text(key)
