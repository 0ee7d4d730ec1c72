"""The ask `expected_working`: how what a meter should read at a place came to be."""

from typing import NamedTuple

from pycore.asks.answers import WorkingAnswer
from pycore.asks.expecting import line_assumptions, meter_fraction_of
from pycore.asks.explain import step_answer
from pycore.asks.meter_bodies import ExpectedWorkingBody, ReadingIn
from pycore.asks.meter_question import given_of, line_of, taken_in, with_due
from pycore.asks.meter_readings import title_of
from pycore.asks.meter_tell import Tell
from pycore.calc import priors
from pycore.calc.due import band_then, outdated
from pycore.calc.expected import Band, band_at, stand_for, tolerances_of
from pycore.calc.expected_story import Looked, pair_assumptions, tell_band, tell_baseline
from pycore.calc.judged import band_for, baseline_of
from pycore.calc.probe import Stand
from pycore.calc.reading import sort_reading, taken_of
from pycore.calc.site import Site, condition_of, site_of, stand_of
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition
from pycore.ground.problems import BadCommand
from pycore.ground.units import Manner
from pycore.ground.working import Step

UNSAID = (None, "")


class _Told(NamedTuple):
    """What is explained: its title, its band, how that came to be, and what was assumed."""

    title: str
    band: Band
    steps: tuple[Step, ...]
    assumptions: list[str]


def expected_working(body: ExpectedWorkingBody, manner: Manner) -> WorkingAnswer:
    """The ask `expected_working`; a problem where a reading is judged by no band."""
    line = line_of(body, manner)
    site = site_of(line.job, line.where, given=given_of(body, line))
    tell = Tell(site.circuits.wired, manner)
    if body.reading is None:
        place = body.at or next(iter(line.where.values()))
        told = _of_place(site, place, body=body, tell=tell)
    else:
        told = _of_reading(site, body.reading, body=body, tell=tell)
    shown = tell.band(told.band)
    texts = {"value": shown["shown"], "range": shown["range"]}
    if line.guessed:
        told.assumptions.extend(line_assumptions(site, tell=tell, guessed=True)[-1:])
    return {
        "title": told.title,
        "result": tell.say("meter_title", "working", **texts),
        "steps": [step_answer(one, manner) for one in told.steps],
        "assumptions": told.assumptions,
    }


def _of_place(site: Site, place: str, *, body: ExpectedWorkingBody, tell: Tell) -> _Told:
    """A head or a box of the table."""
    wired = site.circuits.wired
    node = wired.node_of.get(place)
    if node is None:
        raise BadCommand("not_here", where={"field": "at"}, id=place)
    hz = DIRECT_HZ if body.quantity == "dc_ohm" else TEST_HZ
    condition = Condition(hz, body.controls, site.job.limits.conductor_c)
    boxed = wired.points[node] is not None
    title = tell.say(
        "meter_title",
        f"working_{body.view}" if boxed else "reading",
        place=tell.name(place),
        quantity=tell.say("meter_title", body.quantity),
        controls=tell.say("meter_title", body.controls),
    )
    stand = stand_for(site, node, view=body.view if boxed else "out")
    put = _Put(
        site, condition, stand, meter_fraction_of(body), body.meter_tolerance_pct is not None
    )
    return _solved(put, title, body=body, tell=tell)


def _of_reading(site: Site, read: ReadingIn, *, body: ExpectedWorkingBody, tell: Tell) -> _Told:
    """A reading of the day, by the line's own baseline where there is one."""
    taken = with_due(taken_in(read, manner=tell.manner, field="reading"), site.job)
    one = sort_reading(taken, leads_ohm=None)
    baselines = [
        sort_reading(taken_of(each), leads_ohm=None) for each in site.job.readings if each.baseline
    ]
    band, again = band_for(site, one, baselines=baselines)
    if band is None:
        raise BadCommand("meter_no_band", where={"field": "reading"}, title=title_of(one, tell))
    title = title_of(one, tell)
    best = baseline_of(site, one, baselines=baselines)
    if again and best is not None:
        return _Told(title, band, tuple(tell_baseline(best)), [])
    condition, stand = condition_of(site, one.taken), stand_of(site, one.taken)
    fraction = min(one.meter_fraction, priors.MOST_PCT / 100)
    put = _Put(site, condition, stand, fraction, read.tolerance_pct not in UNSAID)
    told = _solved(put, title, body=body, tell=tell)
    then = band_then(one)
    if then is not None and outdated(site, one) is not None:
        texts = {"then": tell.band(then)["shown"], "range": tell.band(then)["range"]}
        told.assumptions.append(tell.say("meter_assumed", "line_changed", **texts))
    return told


class _Put(NamedTuple):
    """A meter put to a place of a site; `typed`: somebody said how good it is."""

    site: Site
    condition: Condition
    stand: Stand
    fraction: float
    typed: bool


def _solved(put: _Put, title: str, *, body: ExpectedWorkingBody, tell: Tell) -> _Told:
    """What the line should read by its taps and its cable."""
    site, condition, stand, fraction, _ = put
    tolerances = tolerances_of(site, meter_fraction=fraction)
    band, square = band_at(site, condition, stand=stand, tolerances=tolerances)
    said = {"meter": put.typed, "load": body.load_tolerance_pct is not None}
    typed = frozenset(name for name, one in said.items() if one)
    looked = Looked(site.circuits, condition, stand, square, tolerances, typed)
    return _Told(title, band, tuple(tell_band(looked)), _assumptions(looked, tell=tell))


def _assumptions(looked: Looked, *, tell: Tell) -> list[str]:
    """What the number takes for granted."""
    codes = ["sections_solved", f"controls_{looked.condition.controls}"]
    codes += ["windings"] if looked.direct else []
    codes += ["home_run_lifted"] if looked.stand.looking == "back" else []
    said = [tell.say("meter_assumed", code) for code in (*codes, *looked.circuits.wired.assumed)]
    return [*said, *(tell.say("assumption", code) for code in pair_assumptions(looked))]
