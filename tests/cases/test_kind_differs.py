"""Whether a job's copy of a kind still says what the tool's own says."""

from pycore.asks.kind_faces import kind_faces
from pycore.ground.units import Manner
from pycore.ground.words import ENGLISH
from pycore.jobs import Kinds, LoudspeakerKind
from pycore.jobs.catalogue import loudspeaker_kinds

MANNER = Manner("en", "m", ".", "2026-11-26")
NOBODY: dict[str, dict[str, int]] = {"loudspeakers": {}, "attenuators": {}, "cables": {}}
STOCKED = loudspeaker_kinds(ENGLISH["catalogue"])[0]


def differs(kind: LoudspeakerKind) -> bool:
    """What the face of a kind says of it."""
    faces = kind_faces(Kinds(loudspeakers=(kind,)), NOBODY, manner=MANNER)
    return faces["loudspeakers"][kind.id]["differs"]


def test_another_name_or_order_of_rows_is_no_difference() -> None:
    assert not differs(STOCKED)
    turned = {"name": "Mine", "taps": tuple(reversed(STOCKED.taps))}
    assert not differs(STOCKED.model_copy(update=turned))


def test_another_tap_is_a_difference_and_a_kind_of_ones_own_is_compared_with_nothing() -> None:
    fewer = {"taps": STOCKED.taps[1:]}
    assert differs(STOCKED.model_copy(update=fewer))
    assert not differs(STOCKED.model_copy(update={**fewer, "id": "mine"}))
