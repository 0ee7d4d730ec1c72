"""A zone of which something is not known, made ready to be worked out all the same.

What is not known is never guessed: it stands in the middle of a stated range, and its
spread widens every band that depends on it. `assumed` says which ranges were used.
"""

import math
import statistics
from collections.abc import Mapping
from typing import NamedTuple

from pycore.calc import priors
from pycore.calc.draws import Draw, Lookup, exactly, possible_taps
from pycore.calc.lay import Laid
from pycore.calc.pairs import Pair, pair_of
from pycore.ground.units import same_voltage, true_voltage
from pycore.jobs import CableKind, Job, Loudspeaker
from pycore.jobs.catalogue import USUAL_TAPS_W

RECTANGLE = math.sqrt(3)  # half width over standard deviation, JCGM 100:2008, 4.3.7 (from memory)
EXISTING_LOW_W, EXISTING_HIGH_W = 5.0, 200.0  # an unmeasured part: common practice, no source


class Filled(NamedTuple):
    """A laid zone with one number for every draw and section.

    `spread`: for each node, the standard deviation of the logarithm of its load that comes
    from not knowing it. `unsure_ohm`: how much of the zone's loop ohms is only stated.
    """

    laid: Laid
    spread: list[float]
    unsure_ohm: float
    all_ohm: float
    assumed: tuple[str, ...]


def fill(laid: Laid, job: Job) -> Filled:
    """Give every draw and section of a zone one number and a spread."""
    lookup = Lookup.of(job.kinds)
    draws, spread, assumed = [laid.draws[0]], [0.0], dict[str, None]()
    for node in range(1, len(laid.parents)):
        load_w, apart, code = _draw(laid, node, lookup=lookup)
        draws.append(exactly(load_w))
        spread.append(apart)
        if code:
            assumed[code] = None
    sections = _sections(laid, assumed)
    done = laid._replace(draws=draws, pairs=sections.pairs, lengths_m=sections.lengths_m)
    return Filled(done, spread, sections.unsure_ohm, sections.all_ohm, tuple(assumed))


def _draw(laid: Laid, node: int, *, lookup: Lookup) -> tuple[float, float, str]:
    """Watts to take for a node, how far they may be off (ln), and the assumption made."""
    draw, fitted = laid.draws[node], laid.points[node - 1].fitted
    if draw.high is not None and draw.low == draw.high:
        return draw.high, 0.0, ""
    if draw.value is not None and draw.high is not None:
        return draw.value, _apart(draw.low, draw.high), "range_of_loss"
    if fitted.is_ == "loudspeaker":
        return _unknown_tap(fitted, draw, lookup=lookup, line_v=laid.line_v)
    middle_w = math.sqrt(EXISTING_LOW_W * EXISTING_HIGH_W)
    return middle_w, _apart(EXISTING_LOW_W, EXISTING_HIGH_W), "existing_stated"


def _unknown_tap(
    fitted: Loudspeaker, draw: Draw, *, lookup: Lookup, line_v: float
) -> tuple[float, float, str]:
    """The mean of the taps it can stand on, or the middle of the usual ones."""
    marked = possible_taps(fitted, lookup.kind(fitted), line_v=line_v)
    if marked and draw.high is not None:
        each_w = [tap_w * (line_v / true_voltage(at_v)) ** 2 for tap_w, at_v in marked]
        scale = math.sqrt(draw.low * draw.high / (min(each_w) * max(each_w) or 1.0)) or 1.0
        mean_w = statistics.fmean(each_w) * scale
        apart = statistics.pstdev(each_w) * scale / mean_w if mean_w else 0.0
        return mean_w, apart, "taps_of_kind"
    usual = usual_taps_w(line_v)
    logs = [math.log(tap_w) for tap_w in usual]
    return math.exp(statistics.fmean(logs)), statistics.pstdev(logs), "taps_usual"


def usual_taps_w(line_v: float) -> tuple[float, ...]:
    """The usual taps (W) of a line voltage (V), or those of the nearest one."""
    own = next((taps for at_v, taps in USUAL_TAPS_W.items() if same_voltage(at_v, line_v)), None)
    if own is not None:
        return own
    nearest_v = min(USUAL_TAPS_W, key=lambda at_v: abs(math.log(at_v / line_v)))
    return tuple(tap_w * (line_v / nearest_v) ** 2 for tap_w in USUAL_TAPS_W[nearest_v])


def _apart(low: float, high: float) -> float:
    return math.log(high / low) / 2 / RECTANGLE if 0 < low < high else 0.0


class _Sections(NamedTuple):
    pairs: list[Pair | None]
    lengths_m: list[float]
    unsure_ohm: float
    all_ohm: float


def _sections(laid: Laid, assumed: dict[str, None]) -> _Sections:
    """Every section with a cable and a length; unknown ones by their stated ranges."""
    pairs, lengths_m = laid.pairs.copy(), laid.lengths_m.copy()
    stated = _stated_pair(laid)
    unsure_ohm = all_ohm = 0.0
    for node, point in enumerate(laid.points, start=1):
        known = True
        if point.length_m is None:
            lengths_m[node], known = priors.LENGTH_USUAL_M, False
            assumed["lengths_stated"] = None
        if pairs[node] is None and lengths_m[node] > 0:
            pairs[node], known = stated, False
            assumed["cables_stated"] = None
        pair = pairs[node]
        loop_ohm = pair.loop_ohm_per_km * lengths_m[node] / 1000 if pair else 0.0
        all_ohm += loop_ohm
        unsure_ohm += 0.0 if known else loop_ohm
    return _Sections(pairs, lengths_m, unsure_ohm, all_ohm)


def _stated_pair(laid: Laid) -> Pair:
    """The cable the zone uses most, else the usual one."""
    used: dict[int, int] = {}
    for pair in laid.pairs:
        if pair is not None:
            used[id(pair)] = used.get(id(pair), 0) + 1
    most = max(used, key=lambda one: used[one], default=None)
    found = next((pair for pair in laid.pairs if id(pair) == most), None)
    return found or usual_pair()


def usual_pair() -> Pair:
    """The cable that stands for one nobody knows."""
    usual: Mapping[str, object] = {
        "id": "usual",
        "name": "",
        "area_mm2": priors.AREA_USUAL_MM2,
        "class": 5,
        "metal": "copper",
    }
    return pair_of(CableKind.model_validate(usual), 20.0)
