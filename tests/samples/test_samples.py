"""Jobs written by version 1 open for ever.

From the first release on the files in version_1 are never changed: a later version of the job
gets a folder of its own.
"""

import hashlib
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any, get_args

import pytest
from pydantic import BaseModel

from pycore.calc.check import check_job
from pycore.carry.saved import open_saved, save
from pycore.jobs import Job
from tests.drawn import ask

FOLDER = Path(__file__).parent / "version_1"
FILES = {
    "small.json": "83da4789089e838dcd93c7cc030eaa8d3529f08f3b1530b99bb217b5e3f89832",
    "typical.json": "5702072bf66f9f3d4c72bcf75bd7122e45db0d1e83fb30479ab7cc76a85d1225",
    "everything.json": "1f3d0408225d14864e96ec9960ce88665bda10dcca50b2c355482f62c93c091d",
    "read.json": "0bc1e739def39afe8697da14e938e75537fd360300e0ad7af43bf020c091211c",
}


def text_of(name: str) -> str:
    """One of the kept jobs."""
    return (FOLDER / name).read_text(encoding="utf-8")


@pytest.mark.parametrize("name", FILES)
def test_a_kept_job_is_as_it_was_written(name: str) -> None:
    assert hashlib.sha256(text_of(name).encode()).hexdigest() == FILES[name]


@pytest.mark.parametrize("name", FILES)
def test_a_kept_job_opens_with_everything_in_it(name: str) -> None:
    job = open_saved(text_of(name))
    assert without_nothing(json.loads(save(job))) == without_nothing(json.loads(text_of(name)))


@pytest.mark.parametrize("name", FILES)
def test_a_kept_job_is_answered_through_the_door(name: str) -> None:
    seen = ask("open_saved", {"text": text_of(name)})
    assert seen["job"]["id"] == json.loads(text_of(name))["id"]
    assert len(seen["findings"]) == len(check_job(open_saved(text_of(name))).findings)


def test_every_field_a_job_can_have_is_in_the_kept_jobs() -> None:
    said = {path for name in FILES for path in paths_of(json.loads(text_of(name)))}
    assert set(fields_of(Job, "")) - said == set()


def without_nothing(value: Any) -> Any:
    """Plain data without what is empty or not known: left out and null are the same."""
    if isinstance(value, dict):
        inner = {key: without_nothing(one) for key, one in value.items()}
        return {key: one for key, one in inner.items() if one not in (None, [], {}, "")}
    return [without_nothing(one) for one in value] if isinstance(value, list) else value


def paths_of(value: Any, path: str = "") -> Iterator[str]:
    """The dotted name of every field in plain data, without the places in lists."""
    if isinstance(value, dict):
        for key, one in value.items():
            yield f"{path}.{key}"
            yield from paths_of(one, f"{path}.{key}")
    elif isinstance(value, list):
        for one in value:
            yield from paths_of(one, path)


def fields_of(model: type[BaseModel], path: str) -> Iterator[str]:
    """The dotted name of every field a model and the models in it can have."""
    for name, field in model.model_fields.items():
        here = f"{path}.{field.alias or name}"
        yield here
        for inner in models_in(field.annotation):
            yield from fields_of(inner, here)


def models_in(annotation: Any) -> Iterator[type[BaseModel]]:
    """The models an annotation speaks of, through unions, tuples and bounds."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
        return
    for one in get_args(annotation):
        yield from models_in(one)
