"""A short text that is the same for the same content, and for no other.

It names the state a job grew from (`base.print`) and finds a job that is already here.
Content is everything a person put in; not the id, the count of changes, when it was saved
and what it grew from. So a copy under another id has the same print.
"""

import json
from base64 import b32encode
from hashlib import blake2b
from typing import Any

from pycore.jobs import Job

NOT_CONTENT = {"id", "rev", "saved_at", "base", "format", "version"}
BYTES = 15  # 120 bits: 24 letters, and no two jobs ever meet in one


def print_of(job: Job) -> str:
    """The print of a job's content; equal content has equal prints."""
    content = job.model_dump(
        mode="json", by_alias=True, exclude=NOT_CONTENT, exclude_none=True, exclude_defaults=True
    )
    text = json.dumps(_tidy(content), sort_keys=True, ensure_ascii=False, separators=(",", ":"))
    return b32encode(blake2b(text.encode(), digest_size=BYTES).digest()).decode().lower()


def same_content(one: Job, other: Job) -> bool:
    """Whether two jobs say the same, whatever their ids and counts."""
    return print_of(one) == print_of(other)


def _tidy(value: Any) -> Any:
    """The same value with one zero only: -0.0 and 0.0 are equal and must print alike."""
    if isinstance(value, dict):
        return {name: _tidy(each) for name, each in value.items()}
    if isinstance(value, list):
        return [_tidy(each) for each in value]
    return value + 0.0 if isinstance(value, float) else value
