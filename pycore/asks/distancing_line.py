"""A short or a break on a drawn line: its loudspeakers, windings, cables and heat counted."""

import math
from collections.abc import Mapping, Sequence

from pycore.asks.distance_answer import Spotted, Told, copper_of, leads_off, loose_of
from pycore.asks.meter_bodies import DistanceBody
from pycore.asks.meter_question import place_of
from pycore.asks.names import names_of
from pycore.calc import priors
from pycore.calc.locating import Broken, Found, Look, breaks, sections_of, shorts
from pycore.calc.site import Given, Site, site_of
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition
from pycore.formulas import meter
from pycore.ground.problems import BadCommand
from pycore.ground.units import Manner, show
from pycore.ground.words import say
from pycore.ground.working import Known, Step, computed, step

Typed = Mapping[str, float | None]

LEAST_M = 0.001  # what the windings leave open is told from a millimetre on


def short_on_line(body: DistanceBody, typed: Typed, *, manner: Manner) -> Told:
    """Every place of the line at which a short reads so.

    Raises BadCommand `no_short_reads_so` where none does.
    """
    site = _site(body)
    steps = leads_off(typed)
    looks = _looks(body, typed, site=site, steps=steps)
    found = shorts(site, looks)
    if not found:
        raise BadCommand("no_short_reads_so", where={"field": "near_ohm"})
    working = _working(site, found[0], looks=looks, steps=steps)
    errors = [_working(site, one, looks=looks, steps=[])[-1].result for one in found]
    spots = tuple(
        _short_spot(site, one, error_m=error_m, manner=manner)
        for one, error_m in zip(found, errors, strict=True)
    )
    assumed = ("windings", "home_run_lifted") if body.quantity == "dc_ohm" else ("home_run_lifted",)
    codes = (*site.circuits.wired.assumed, *assumed)
    copper = copper_of(body, typed)
    return Told(spots, found[0].place.own_ohm, tuple(working), codes, copper)


def break_on_line(body: DistanceBody, typed: Typed, *, manner: Manner) -> Told:
    """Every section on which a break agrees with what was read.

    Raises BadCommand `no_break_reads_so` where none does.
    """
    site = _site(body)
    steps = leads_off(typed)
    looks = _looks(body, typed, site=site, steps=steps)
    found = breaks(site, looks, load_fraction=priors.LOAD_PCT / 100)
    if not found:
        raise BadCommand("no_break_reads_so", where={"field": "near_ohm"})
    spots = tuple(_break_spot(site, one, manner=manner) for one in found)
    codes = (*site.circuits.wired.assumed, "home_run_lifted")
    return Told(spots, None, tuple(steps), codes, copper_of(body, typed))


def _site(body: DistanceBody) -> Site:
    if body.job is None or body.where is None:
        raise BadCommand("meter_no_line", where={"field": "where"})
    site = site_of(body.job, place_of(body.where), given=Given(priors.LOAD_PCT, None))
    if not sections_of(site):
        raise BadCommand("line_without_length", where={"field": "where"})
    return site


def _looks(body: DistanceBody, typed: Typed, *, site: Site, steps: Sequence[Step]) -> list[Look]:
    """The readings as the line has them: near at the amplifier's end, far at a box."""
    hz = DIRECT_HZ if body.quantity == "dc_ohm" else TEST_HZ
    condition = Condition(hz, "override", copper_of(body, typed).heat_c)
    places = [None, body.far_point]
    if len(steps) > 1 and body.far_point not in site.circuits.wired.node_of:
        raise BadCommand("far_box_needed", where={"field": "far_point"})
    return [
        Look(one.result, loose_of(one.result, typed), place, condition)
        for one, place in zip(steps, places, strict=False)
    ]


def _working(
    site: Site, found: Found, *, looks: Sequence[Look], steps: Sequence[Step]
) -> list[Step]:
    """By the cable alone, then what the line's own loudspeakers and sections add, and the error."""
    loop = Known(found.loop_ohm_per_km, "ohm_per_km", "computed")
    made = [*steps, _by_cable(site, looks, loop=loop)]
    others = Known(found.metres - made[-1].result, "m", "computed")
    inputs = {"cable_m": computed(made[-1]), "others_m": others}
    made.append(step("on_line", meter.on_line_m, inputs=inputs))
    loose_ohm = math.hypot(*(one.loose_ohm for one in looks)) / len(looks)
    from_m = max(site.circuits.wired.far_m) / 2 if len(looks) > 1 else 0.0
    inputs = {
        "meter_ohm": Known(loose_ohm, "ohm", "assumed"),
        "loop_ohm_per_km": loop,
        "distance_m": Known(abs(found.metres - from_m), "m", "computed"),
        "cable_fraction": Known(priors.CABLE_PCT / 100, "fraction", "assumed"),
    }
    made.append(step("distance_error", meter.distance_error_m, inputs=inputs))
    if looks[0].condition.hz == DIRECT_HZ and found.windings_m >= LEAST_M:
        inputs = {
            "error_m": computed(made[-1]),
            "windings_m": Known(found.windings_m, "m", "computed"),
        }
        made.append(step("error_with_windings", meter.error_with_windings_m, inputs=inputs))
    return made


def _by_cable(site: Site, looks: Sequence[Look], *, loop: Known) -> Step:
    """Where it would be if nothing but cable hung there."""
    reads = [Known(one.read_ohm, "ohm", "computed") for one in looks]
    if len(looks) == 1:
        inputs = {"read_ohm": reads[0], "loop_ohm_per_km": loop}
        return step("short_distance", meter.short_distance_m, inputs=inputs)
    wired = site.circuits.wired
    route_m = wired.far_m[wired.node_of[looks[1].place or ""]]
    inputs = {
        "near_ohm": reads[0],
        "far_ohm": reads[1],
        "route_m": Known(route_m, "m", "computed"),
        "loop_ohm_per_km": loop,
    }
    return step("two_end_distance", meter.two_end_short_m, inputs=inputs)


def _texts(site: Site, node: int, *, manner: Manner) -> dict[str, str]:
    wired = site.circuits.wired
    names = names_of(site.job, language=manner.language)
    before = max(wired.parents[node], 0)
    name = names.get(wired.ids[before], wired.ids[before])
    if _starts(site, node):
        name = say("meter_title", "amplifier", language=manner.language)
    return {"before": name, "place": names.get(wired.ids[node], "")}


def _starts(site: Site, node: int) -> bool:
    """Whether a section leaves the amplifier's end."""
    wired = site.circuits.wired
    return wired.points[max(wired.parents[node], 0)] is None


def _short_spot(site: Site, found: Found, *, error_m: float, manner: Manner) -> Spotted:
    wired = site.circuits.wired
    node, share = found.place.node, found.place.share
    since_m = round(share * wired.lengths_m[node], 1)  # nobody looks closer than that
    texts = {**_texts(site, node, manner=manner), "since_m": show(since_m, "m", manner=manner)}
    low_m = max(found.metres - error_m, 0.0)
    code = "short" if found.place.own_ohm is None else "short_own"
    code = f"{code}_start" if _starts(site, node) else code
    high_m = found.metres + error_m
    length_m = wired.lengths_m[node]
    return Spotted(found.metres, low_m, high_m, wired.ids[node], share, length_m, code, texts)


def _break_spot(site: Site, one: Broken, *, manner: Manner) -> Spotted:
    middle_m = (one.from_m + one.to_m) / 2
    wired = site.circuits.wired
    texts = _texts(site, one.node, manner=manner)
    length_m = one.to_m - one.from_m
    return Spotted(
        middle_m, one.from_m, one.to_m, wired.ids[one.node], 0.5, length_m, "break", texts
    )
