"""The test sheet: what every zone should read, at the amplifier's end and at every box."""

from collections.abc import Iterator, Mapping

from pycore.calc import priors
from pycore.calc.bypass import DIRECT, STATES, Bypass, bypass_of, staying_in
from pycore.calc.expected import VIEWS, Tolerances, bands, heads, tolerances_of
from pycore.calc.judge import PRINTED
from pycore.calc.site import Given, Site, site_of
from pycore.calc.verdicts import least_of
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition
from pycore.ground.problems import Problem
from pycore.ground.units import Manner, show
from pycore.ground.words import say
from pycore.jobs import Job, Zone
from pycore.jobs.records import Quantity
from pycore.sheets.around import head_table, other_readings, signature
from pycore.sheets.filing import Filing, Wanted
from pycore.sheets.tables import Cell, Head, Sheet, Table
from pycore.sheets.wording import Words

# What is read before anything else, by what it is called in a first test.
FIRST: Mapping[str, Quantity] = {"foreign": "foreign_v", "earth": "earth_ohm"}
# What is said on the paper itself, since it is read at the box and not on a screen.
BEFORE = ("prove_dead", "fire_panel", "controls_full", "leads_null", "earth_test")


def test_sheet(job: Job, *, names: Mapping[str, str], manner: Manner) -> Sheet:
    """The sheet of a whole job. A zone of which nothing can be said is named with the reason."""
    words = Words(names, manner)
    filing = Filing(job, words)
    tables: list[Table] = [head_table(job, words)]
    warnings: list[str] = []
    for zone in job.zones:
        try:
            site = site_of(job, {"zone": zone.id}, given=Given(priors.LOAD_PCT, None))
        except Problem as problem:
            texts = {name: str(value) for name, value in problem.values.items()}
            why = say("problem", problem.code, values=texts, language=manner.language)
            warnings.append(words.say("not_known", zone=zone.name, why=why))
            continue
        tolerances = tolerances_of(site, meter_fraction=priors.METER_PCT / 100)
        heavy = _too_heavy(site, zone, tolerances=tolerances, words=words)
        warnings.extend(one for one in heavy if one not in warnings)
        tables.append(_first(zone, filing=filing))
        tables.append(_ends(site, zone, tolerances=tolerances, filing=filing))
        if zone.line:
            tables.extend(_boxes(site, zone, tolerances=tolerances, filing=filing))
    tables += (*other_readings(filing, words), signature(words))
    cautions = (words.caution(code) for code in BEFORE)
    notes = (*cautions, words.say("direct_says"), words.say("not_seen"), words.say("not_for"))
    title = words.say("title", job=job.name)
    return Sheet(title, tuple(warnings), tuple(tables), notes)


def _first(zone: Zone, *, filing: Filing) -> Table:
    """What is read before any ohms: a line that is not dead is not measured."""
    words = filing.words
    none_v = show(priors.FOREIGN_NONE_V, "v", manner=words.manner)
    rows = tuple(
        (
            Cell(words.say(f"row_{code}")),
            Cell(
                say(
                    "meter_run",
                    f"{code}_expects",
                    values={"none_v": none_v},
                    language=words.manner.language,
                )
            ),
            filing.line(zone.id, Wanted(quantity, None)),
        )
        for code, quantity in FIRST.items()
    )
    heads_ = (
        Head(words.say("head_what")),
        Head(words.say("head_expected")),
        Head(words.say("head_read"), noted=True),
    )
    return Table(words.say("first", zone=zone.name), heads_, rows)


def _bypass(site: Site, zone: Zone) -> Bypass:
    return bypass_of((zone,), site.job.kinds)


def _conditions(site: Site, zone: Zone, *, ends: bool) -> Iterator[Condition]:
    """1 kHz in the states that differ, then direct current, unless a control stays in its way.
    At a box a control that can be bypassed is, or stands as it is set."""
    warm_c = site.job.limits.conductor_c
    bypass = _bypass(site, zone)
    for state in STATES[bypass]:
        if ends or state != "open" or "override" not in STATES[bypass]:
            yield Condition(TEST_HZ, state, warm_c)
    for state in DIRECT[bypass]:
        yield Condition(DIRECT_HZ, state, warm_c)


def _quantity(condition: Condition) -> Quantity:
    return "dc_ohm" if condition.hz == DIRECT_HZ else "z_1k_ohm"


def _too_heavy(site: Site, zone: Zone, *, tolerances: Tolerances, words: Words) -> Iterator[str]:
    """Flat, whatever else: what must not be connected as it is planned."""
    wired = site.circuits.wired
    least = least_of(wired.output, wired.line_v)
    told = [one for one in _conditions(site, zone, ends=True) if one.hz == TEST_HZ]
    if least.ohm is None:
        return
    for one in heads(site, told, tolerances=tolerances):
        value = one.band.value
        if value is not None and value < least.ohm * PRINTED:
            texts = {"value": words.ohms(value), "limit": words.ohms(least.ohm)}
            yield words.say("do_not_connect", zone=words.names.get(one.place, ""), **texts)


def _wanted(site: Site, zone: Zone, *, condition: Condition) -> Wanted:
    """What belongs into a line; without controls it does not matter how they are said to stand."""
    alike = _bypass(site, zone) == "none"
    return Wanted(_quantity(condition), None if alike else condition.controls)


def _ends(site: Site, zone: Zone, *, tolerances: Tolerances, filing: Filing) -> Table:
    """The home run at the amplifier, and the same line looked at from its far end."""
    words = filing.words
    wired = site.circuits.wired
    start = wired.starts[site.zones[0]]
    far = max(wired.beyond(start), key=lambda node: wired.far_m[node])
    rows = []
    for condition in _conditions(site, zone, ends=True):
        views = bands(site, condition, tolerances=tolerances)
        texts = {
            "quantity": words.title(_quantity(condition)),
            "controls": words.title(condition.controls),
            "place": words.names.get(wired.ids[far], ""),
        }
        wanted = _wanted(site, zone, condition=condition)
        here = filing.line(zone.id, wanted)
        rows.append((Cell(words.say("row", **texts)), words.cell(views["out"][start]), here))
        if far != start:
            told = Cell(words.say("row_far", **texts))
            there = filing.line(wired.ids[far], wanted, looking="back")
            rows.append((told, words.cell(views["back"][far]), there))
    heads_ = (
        Head(words.say("head_what")),
        Head(words.say("head_expected"), "ohm", banded=True),
        Head(words.say("head_read"), "ohm", noted=True),
    )
    return Table(
        words.say("ends", zone=zone.name), heads_, tuple(rows), _about(site, zone, words=words)
    )


def _about(site: Site, zone: Zone, *, words: Words) -> tuple[str, ...]:
    """What the controls of a zone mean for its lines."""
    bypass = _bypass(site, zone)
    if bypass == "all":
        return ()
    staying = ", ".join(words.names.get(one, "") for one in staying_in((zone,), site.job.kinds))
    code = "states_alike" if bypass == "none" else "stays_in"
    return (words.say(code, zone=zone.name, controls=staying),)


def _boxes(site: Site, zone: Zone, *, tolerances: Tolerances, filing: Filing) -> Iterator[Table]:
    """Every box, in every way an instrument can be put to it."""
    words = filing.words
    wired = site.circuits.wired
    start = wired.starts[site.zones[0]]
    nodes = [node for node in wired.beyond(start) if wired.points[node] is not None]
    manner = words.manner
    told_heads = (
        Head(words.say("head_box")),
        Head(words.say("head_far"), "m"),
        *(Head(words.say(f"head_{view}"), "ohm", banded=True) for view in VIEWS),
        Head(words.say("head_read_how"), "ohm", noted=True),
    )
    for condition in _conditions(site, zone, ends=False):
        views = bands(site, condition, tolerances=tolerances)
        wanted = _wanted(site, zone, condition=condition)
        rows = tuple(
            (
                Cell(words.names.get(wired.ids[node], "")),
                Cell(show(wired.far_m[node], "m", manner=manner), wired.far_m[node]),
                *(words.cell(views[view][node]) for view in VIEWS),
                filing.line(wired.ids[node], wanted, says_how=True),
            )
            for node in nodes
        )
        code = f"boxes_{_quantity(condition)}_{condition.controls}"
        yield Table(words.say(code, zone=zone.name), told_heads, rows)
