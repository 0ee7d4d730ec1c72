"""Amplifiers: their outputs, and the watts those outputs share."""

from typing import Annotated, Literal

from pydantic import Field

from pycore.jobs.base import PLAIN_LINE, Closed, Hertz, Id, Name, Ohms, SeriesOhms, Volts, Watts

Mark = Annotated[str, Field(max_length=20), PLAIN_LINE]


class Output(Closed):
    """One pair of terminals with the line voltage and the limits printed beside it."""

    id: Id
    name: Name
    line_v: Volts
    max_w: Watts | None = None
    min_load_ohm: Ohms | None = None
    source_ohm: SeriesOhms | None = None
    drive: Literal["isolated", "direct"] | None = None
    marked_class: Mark | None = None
    high_pass_hz: Hertz | None = None


class Pool(Closed):
    """Watts that several outputs share; `other_w` is what else draws on them."""

    w: Watts
    outputs: Annotated[tuple[Id, ...], Field(max_length=64)]
    other_w: Watts | None = None


class Amplifier(Closed):
    """An amplifier. `pools` None: not known whether its outputs share watts; (): they do not."""

    id: Id
    name: Name
    pools: Annotated[tuple[Pool, ...], Field(max_length=64)] | None = None
    outputs: Annotated[tuple[Output, ...], Field(max_length=64)] = ()
