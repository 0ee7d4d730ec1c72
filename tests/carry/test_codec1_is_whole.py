"""Codec 1 has a column for every field and choice of a job, and its copies are as they were.

A field added to a model has to be added behind the last of its table in `codec1/shape.py`.
"""

from typing import Any, get_args

import pytest

from pycore.carry.codec1 import shape
from pycore.carry.codec1.coders import Choices, Either
from pycore.carry.codec1.dictionary import DICTIONARY
from pycore.carry.codec1.stock import STOCK
from pycore.carry.codec1.table import Table
from pycore.carry.prints import print_of
from pycore.ground.words import ENGLISH
from pycore.jobs import Closed, Job
from pycore.jobs.amplifiers import Amplifier, Output, Pool
from pycore.jobs.catalogue import DEFAULT_LIMITS, attenuator_kinds, loudspeaker_kinds
from pycore.jobs.catalogue_cables import cable_kinds
from pycore.jobs.fitted import Attenuator, Existing, Junction, Loudspeaker
from pycore.jobs.job import Limits
from pycore.jobs.kinds import AttenuatorKind, CableKind, Kinds, LoudspeakerKind, Tap
from pycore.jobs.records import Area, Reading, Spot, Tick
from pycore.jobs.zones import Point, Zone
from tests.samples.travellers import make_traveller

DICTIONARY_MARK = (1437, 2028060896)
PRINT_OF_THREE = "gfvco5jbifbgrxwecv73gosa"
TABLES: list[tuple[Table, tuple[type[Closed], ...]]] = [
    (shape.JOB, (Job,)),
    (shape.LIMITS, (Limits,)),
    (shape.KINDS, (Kinds,)),
    (shape.CABLES, (CableKind,)),
    (shape.LOUDSPEAKERS, (LoudspeakerKind,)),
    (shape.TAPS, (Tap,)),
    (shape.ATTENUATORS, (AttenuatorKind,)),
    (shape.AMPLIFIERS, (Amplifier,)),
    (shape.OUTPUTS, (Output,)),
    (shape.POOLS, (Pool,)),
    (shape.AREAS, (Area,)),
    (shape.ZONES, (Zone,)),
    (shape.POINTS, (Point,)),
    (shape.FITTED, (Loudspeaker, Attenuator, Existing, Junction)),
    (shape.READINGS, (Reading,)),
    (shape.SPOTS, (Spot,)),
    (shape.TICKS, (Tick,)),
]
NAMES = [models[0].__name__ for _table, models in TABLES]


@pytest.mark.parametrize(("table", "models"), TABLES, ids=NAMES)
def test_every_field_of_a_model_has_a_column(
    table: Table, models: tuple[type[Closed], ...]
) -> None:
    columns = {field.name for field in table.fields} - {"stock"}
    fields = {field.alias or name for model in models for name, field in model.model_fields.items()}
    assert fields - {"format"} == columns


@pytest.mark.parametrize(("table", "models"), TABLES, ids=NAMES)
def test_every_choice_of_a_field_has_its_place(
    table: Table, models: tuple[type[Closed], ...]
) -> None:
    coders = {field.name: field.coder for field in table.fields}
    for model in models:
        for name, field in model.model_fields.items():
            coder = coders.get(field.alias or name)
            if isinstance(coder, Either):
                coder = coder.words
            if isinstance(coder, Choices):
                assert literals_of(field.annotation) <= set(coder.choices), name


def literals_of(annotation: Any) -> set[str]:
    """The words a field may say."""
    if isinstance(annotation, str):
        return {annotation}
    return {word for each in get_args(annotation) for word in literals_of(each)}


def test_the_frozen_catalogue_and_limits_still_serve_those_of_today() -> None:
    """A newer catalogue costs characters, nothing else: then say so here and leave the copy.

    Controls were called by their watts alone when the copy was made; now the name says at which
    volts, so a link with a control writes its name out.
    """
    names = dict(ENGLISH["catalogue"])
    for name in [name for name in names if name.startswith("control_")]:
        names[name] = names[name].replace(" at 100 V", "")
    today = {
        "cables": cable_kinds(names),
        "loudspeakers": loudspeaker_kinds(names),
        "attenuators": attenuator_kinds(names),
    }
    for family, kinds in today.items():
        raw = [kind.model_dump(mode="json", exclude_none=True) for kind in kinds]
        assert raw == list(STOCK[family])
    usual = {field.name: field.usual for field in shape.LIMITS.fields}
    assert set(usual) == set(type(DEFAULT_LIMITS).model_fields)


def test_the_dictionary_and_prints_are_as_they_were() -> None:
    from zlib import crc32

    assert (len(DICTIONARY), crc32(DICTIONARY)) == DICTIONARY_MARK
    assert print_of(make_traveller(3, free_labels=True, ticked=True)) == PRINT_OF_THREE
