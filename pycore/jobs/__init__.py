"""What is on the wall: frozen, closed, bounded models of a job, and walking its lines."""

from pycore.jobs.amplifiers import Amplifier, Output, Pool
from pycore.jobs.base import Closed
from pycore.jobs.fitted import Attenuator, Existing, Fitted, Junction, Loudspeaker
from pycore.jobs.job import Job, Limits
from pycore.jobs.kinds import AttenuatorKind, CableKind, Kinds, LoudspeakerKind, Tap
from pycore.jobs.records import Area, Reading, Tick
from pycore.jobs.zones import Point, Zone

__all__ = [
    "Amplifier",
    "Area",
    "Attenuator",
    "AttenuatorKind",
    "CableKind",
    "Closed",
    "Existing",
    "Fitted",
    "Job",
    "Junction",
    "Kinds",
    "Limits",
    "Loudspeaker",
    "LoudspeakerKind",
    "Output",
    "Point",
    "Pool",
    "Reading",
    "Tap",
    "Tick",
    "Zone",
]
