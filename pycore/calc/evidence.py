"""Readings made into evidence: each is set against what every fault would make it read."""

import math
from collections.abc import Sequence
from typing import Literal, NamedTuple

from pycore.calc import priors
from pycore.calc.bypass import staying_in
from pycore.calc.effects import NOTHING
from pycore.calc.faults import Fault
from pycore.calc.fill import RECTANGLE
from pycore.calc.likelihood import Row, Shared
from pycore.calc.predict import Expected, Scope, expect_all, look
from pycore.calc.probe import Stand
from pycore.calc.reading import Meant, Sign
from pycore.calc.site import Site, condition_of, stand_of
from pycore.calc.volts import expect_volts
from pycore.jobs.records import Quantity

# Weighed elsewhere, as ears and legs are, or not at all.
UNWEIGHED: tuple[Quantity, ...] = ("plays", "earth_ohm", "foreign_v")
SHOWS_UP_TO_OHM = 20_000.0  # a hand-held impedance meter (common practice, no source)
HALF = 0.5  # of a meter's variance is its scale, shared by all it reads; the rest by chance


class Reference(NamedTuple):
    """A reading of the same place in good order: its logarithm, and where the meter stood."""

    log_read: float
    scope: Scope
    meant: Meant


class Evidence(NamedTuple):
    """One reading that says something. `log_read`: of ohms, or of the share of the near volts;
    of the limit it lies beyond, when it is open or short."""

    meant: Meant
    sign: Sign
    kind: Literal["ohm", "volts"]
    node: int
    scope: Scope
    log_read: float
    reference: Reference | None


class Collected(NamedTuple):
    """The evidence, and for each reading by id why it is not, or how it was taken (codes)."""

    evidence: list[Evidence]
    notes: dict[str, tuple[str, ...]]


def collect(site: Site, meants: Sequence[Meant], *, references: Sequence[Meant]) -> Collected:
    """Everything measured that says something about the zones in question."""
    found = Collected([], {one.taken.id: one.notes for one in meants})
    near = {
        _tone(one): one
        for one in meants
        if one.taken.quantity == "volts" and _at_rack(site, one) and one.value
    }
    for one in meants:
        if one.sign == "nothing" or one.taken.quantity in UNWEIGHED:
            continue
        made = _made(site, one, near=near.get(_tone(one)), references=references)
        if isinstance(made, str):
            found.notes[one.taken.id] = (*one.notes, made)
        elif made is not None:
            found.evidence.append(made)
    return found


def _tone(one: Meant) -> tuple[str, str]:
    """What near and far volts must have in common: the day, and how the controls stood."""
    return one.taken.controls, one.taken.at[:10]


def _made(
    site: Site, one: Meant, *, near: Meant | None, references: Sequence[Meant]
) -> Evidence | str | None:
    """A reading as evidence, why it is none, or None where it only serves another."""
    if one.taken.place not in site.circuits.wired.node_of:
        return "other_output"
    if one.taken.quantity == "volts":
        return _volts(site, one, near=near)
    if one.taken.quantity == "amps":
        return "amps_alone"  # with volts beside them they have been made ohms already
    return "other_zone" if _other_zone(site, one) else _ohms(site, one, references=references)


def _at_rack(site: Site, one: Meant) -> bool:
    node = site.circuits.wired.node_of.get(one.taken.place)
    return node is not None and node in (0, *site.circuits.wired.starts)


def _other_zone(site: Site, one: Meant) -> bool:
    node = site.circuits.wired.node_of[one.taken.place]
    return node > 0 and site.circuits.wired.zone_at[node] not in site.zones


def _ohms(site: Site, one: Meant, *, references: Sequence[Meant]) -> Evidence | str:
    """A reading in ohms; why not, where controls hide the line from an ohmmeter."""
    if one.taken.quantity == "dc_ohm" and (hidden := hidden_from_direct(site, one)):
        return hidden
    scope = scope_of(site, one)
    sign, log_read = _logged(one)
    reference = None
    if sign == "number":
        again = [each for each in references if each.taken.setting == one.taken.setting]
        best = max(again, key=lambda each: each.taken.at, default=None)
        if best is not None and best.sign == "number" and best.value:
            reference = Reference(math.log(best.value), scope_of(site, best), best)
    return Evidence(one, sign, "ohm", scope.probe.stand.node, scope, log_read, reference)


def scope_of(site: Site, one: Meant) -> Scope:
    """The meter of a reading at its place."""
    stand, condition = stand_of(site, one.taken), condition_of(site, one.taken)
    return look(
        site.circuits, condition, stand=stand, each_fraction=site.each_fraction, rough=False
    )


def hidden_from_direct(site: Site, one: Meant) -> str:
    """Why an ohmmeter sees no line there: a control that is not bypassed lies in its way, and it
    reads that control's winding; nothing where none does."""
    wired = site.circuits.wired
    staying = set(staying_in(wired.zones, site.job.kinds))
    if one.taken.controls == "override" and not staying:
        return ""
    probe = scope_of(site, one).probe
    inside = {wired.ids[node] for node, new in enumerate(probe.control_at) if new >= 0}
    if inside & staying:
        return "controls_stay"
    return "controls_hide" if inside and one.taken.controls != "override" else ""


def _logged(one: Meant) -> tuple[Sign, float]:
    """Its sign and its logarithm; a number beyond what meters show is an open line."""
    if one.sign == "short" or (one.value or 0.0) < 0:
        return "short", math.log(max(one.loose, priors.METER_OHM))
    if one.sign == "open" or one.value is None or one.value > SHOWS_UP_TO_OHM:
        return "open", math.log(SHOWS_UP_TO_OHM)
    return "number", math.log(one.value)


def _volts(site: Site, one: Meant, *, near: Meant | None) -> Evidence | str | None:
    """Volts far out against those near the amplifier on the same day."""
    if _at_rack(site, one):
        return None if one.value else "no_near_volts"
    if near is None or not near.value:
        return "no_near_volts"
    condition = condition_of(site, one.taken)
    stand = Stand(0, "out", frozenset(), bare=False)
    scope = look(
        site.circuits, condition, stand=stand, each_fraction=site.each_fraction, rough=False
    )
    node = site.circuits.wired.node_of[one.taken.place]
    if scope.probe.node_at[node] < 0:
        return "other_output"
    if one.sign == "short" or not one.value:
        return Evidence(one, "short", "volts", node, scope, math.log(NO_VOLTS), None)
    log_share = math.log(one.value / near.value)
    return Evidence(one, "number", "volts", node, scope, log_share, None)


NO_VOLTS = 0.01  # of those at the amplifier: none to speak of


def expected_by(one: Evidence, faults: Sequence[Fault]) -> list[Expected]:
    """What each fault would make this reading."""
    if one.kind == "volts":
        return expect_volts(one.scope, one.node, faults=faults)
    return expect_all(one.scope, faults)


def rows_of(one: Evidence, expected: Sequence[Expected], *, bias: float) -> list[Row]:
    """This reading against each fault. `bias`: by how much all loudspeakers here read high
    (ln), where other lines have told."""
    meant = one.meant
    own = HALF * meant.meter_fraction**2 / 3
    if one.kind == "ohm" and meant.value:
        own += (meant.loose / meant.value) ** 2 / 3
    if one.reference is not None:
        return _against_reference(one, one.reference, expected=expected)
    rows = []
    for log_ohm, follows, variance in expected:
        copper = 1 - follows if one.kind == "ohm" else -follows
        off = one.log_read - log_ohm - follows * bias
        if one.sign == "short":
            off = -off
        rows.append(Row(off, follows, copper, own + variance, one.sign != "number"))
    return rows


def _against_reference(
    one: Evidence, reference: Reference, *, expected: Sequence[Expected]
) -> list[Row]:
    """Against the line's own baseline only what has changed counts, and that sharply."""
    healthy = Fault("healthy", 0, NOTHING, 1.0)
    was = expect_all(reference.scope, [healthy])[0]
    repeat = max(priors.REPEAT_PCT, priors.LEAST_PCT) / 100
    read = one.meant.value or 1.0
    own = repeat**2 / 3 + (min(one.meant.loose, read * repeat) / read) ** 2 / 3
    moved = one.log_read - reference.log_read + was.log_ohm
    return [
        Row(
            moved - log_ohm,
            follows - was.follows,
            was.follows - follows,
            own + abs(variance - was.variance),
        )
        for log_ohm, follows, variance in expected
    ]


def shared_by(site: Site, evidence: Sequence[Evidence], *, load_variance: float) -> Shared:
    """What the readings have in common. `load_variance`: of all loudspeakers alike (ln²)."""
    windings = math.log(priors.WINDING_HIGH / priors.WINDING_LOW) / 2 / RECTANGLE
    gains = [
        0.0 if one.reference else one.meant.meter_fraction * math.sqrt(HALF / 3) for one in evidence
    ]
    return Shared(
        loads=tuple(int(one.scope.direct) for one in evidence),
        instruments=tuple(one.meant.taken.instrument for one in evidence),
        gains=tuple(
            gain if one.kind == "ohm" else 0.0 for gain, one in zip(gains, evidence, strict=True)
        ),
        load_variances=(load_variance, load_variance + windings**2),
        copper_variance=site.copper_fraction**2,
    )
