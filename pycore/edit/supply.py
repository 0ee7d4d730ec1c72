"""Commands for amplifiers and their outputs."""

from typing import Annotated, Literal

from pydantic import Field

from pycore.edit.change import (
    changed,
    find_amplifier,
    find_output,
    given,
    placed,
    replaced,
    require,
    without,
)
from pycore.jobs import Amplifier, Closed, Job, Output, Pool
from pycore.jobs.amplifiers import Mark
from pycore.jobs.base import Hertz, Id, Name, Ohms, SeriesOhms, Volts, Watts


class AddAmplifier(Closed):
    """Put an amplifier in."""

    do: Literal["add_amplifier"]
    amplifier: Amplifier

    def apply(self, job: Job) -> Job:
        """The job with one amplifier more."""
        return changed(job, amplifiers=(*job.amplifiers, self.amplifier))


class AmplifierChanges(Closed):
    """What may be changed of an amplifier."""

    name: Name | None = None
    pools: Annotated[tuple[Pool, ...], Field(max_length=64)] | None = None


class ChangeAmplifier(Closed):
    """Name an amplifier or say what its outputs share."""

    do: Literal["change_amplifier"]
    amplifier: Id
    changes: AmplifierChanges

    def apply(self, job: Job) -> Job:
        """The job with the amplifier changed."""
        fields = given(self.changes)
        require(fields, "name")
        new = changed(find_amplifier(job, self.amplifier), **fields)
        return changed(job, amplifiers=replaced(job.amplifiers, new))


class MoveAmplifier(Closed):
    """List an amplifier before another, or last."""

    do: Literal["move_amplifier"]
    amplifier: Id
    before: Id | None = None

    def apply(self, job: Job) -> Job:
        """The job with its amplifiers in another order."""
        one = find_amplifier(job, self.amplifier)
        return changed(job, amplifiers=placed(job.amplifiers, one, before=self.before))


class RemoveAmplifier(Closed):
    """Take an amplifier out; zones on its outputs are then landed nowhere."""

    do: Literal["remove_amplifier"]
    amplifier: Id

    def apply(self, job: Job) -> Job:
        """The job without the amplifier."""
        gone = find_amplifier(job, self.amplifier)
        job = _lift_zones(job, {output.id for output in gone.outputs})
        return changed(job, amplifiers=without(job.amplifiers, gone.id))


class AddOutput(Closed):
    """Add an output to an amplifier, last or before another."""

    do: Literal["add_output"]
    amplifier: Id
    output: Output
    before: Id | None = None

    def apply(self, job: Job) -> Job:
        """The job with one output more."""
        amplifier = find_amplifier(job, self.amplifier)
        # appended first, so that an id met twice is refused before anything moves
        new = changed(amplifier, outputs=(*amplifier.outputs, self.output))
        job = changed(job, amplifiers=replaced(job.amplifiers, new))
        outputs = placed(new.outputs, self.output, before=self.before)
        new = changed(new, outputs=outputs, pools=_shared_with(amplifier, self.output.id))
        return changed(job, amplifiers=replaced(job.amplifiers, new))


class OutputChanges(Closed):
    """What may be changed of an output."""

    name: Name | None = None
    line_v: Volts | None = None
    max_w: Watts | None = None
    min_load_ohm: Ohms | None = None
    source_ohm: SeriesOhms | None = None
    drive: Literal["isolated", "direct"] | None = None
    marked_class: Mark | None = None
    high_pass_hz: Hertz | None = None


class ChangeOutput(Closed):
    """Change what is known of an output."""

    do: Literal["change_output"]
    output: Id
    changes: OutputChanges

    def apply(self, job: Job) -> Job:
        """The job with the output changed."""
        amplifier, output = find_output(job, self.output)
        fields = given(self.changes)
        require(fields, "name", "line_v")
        outputs = replaced(amplifier.outputs, changed(output, **fields))
        new = changed(amplifier, outputs=outputs)
        return changed(job, amplifiers=replaced(job.amplifiers, new))


class MoveOutput(Closed):
    """Move an output, within its amplifier or to another, whose watts it then shares."""

    do: Literal["move_output"]
    output: Id
    amplifier: Id
    before: Id | None = None

    def apply(self, job: Job) -> Job:
        """The job with the output in its new place."""
        home, output = find_output(job, self.output)
        target = find_amplifier(job, self.amplifier)
        amplifiers = job.amplifiers
        if home.id != target.id:
            amplifiers = replaced(amplifiers, _without_output(home, output.id))
        pools = target.pools if home.id == target.id else _shared_with(target, output.id)
        outputs = placed(target.outputs, output, before=self.before)
        moved = changed(target, outputs=outputs, pools=pools)
        return changed(job, amplifiers=replaced(amplifiers, moved))


class RemoveOutput(Closed):
    """Take an output out; zones on it are then landed nowhere."""

    do: Literal["remove_output"]
    output: Id

    def apply(self, job: Job) -> Job:
        """The job without the output."""
        amplifier, output = find_output(job, self.output)
        job = _lift_zones(job, {output.id})
        new = _without_output(amplifier, output.id)
        return changed(job, amplifiers=replaced(job.amplifiers, new))


def _shared_with(amplifier: Amplifier, output: str) -> tuple[Pool, ...] | None:
    """The pools with one output more: where all outputs share one pool, so does a new one."""
    pools = amplifier.pools
    if pools is None or len(pools) != 1 or len(pools[0].outputs) < len(amplifier.outputs):
        return pools
    return (changed(pools[0], outputs=(*pools[0].outputs, output)),)


def _without_output(amplifier: Amplifier, gone: str) -> Amplifier:
    pools = amplifier.pools
    if pools is not None:
        pools = tuple(
            changed(pool, outputs=tuple(one for one in pool.outputs if one != gone))
            for pool in pools
        )
    return changed(amplifier, pools=pools, outputs=without(amplifier.outputs, gone))


def _lift_zones(job: Job, outputs: set[str]) -> Job:
    zones = tuple(
        changed(
            zone,
            output=None if zone.output in outputs else zone.output,
            page_output=None if zone.page_output in outputs else zone.page_output,
        )
        for zone in job.zones
    )
    return changed(job, zones=zones)
