"""How every thing of a job looks in a list, its verdict taken from all that concerns it."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from typing_extensions import TypedDict

from pycore.asks.answers import Face, Faces, FindingAnswer, JobFace, LeftBy
from pycore.asks.kind_faces import kind_faces, kinds_used
from pycore.asks.point_lines import point_detail, point_line
from pycore.asks.shown import Bounds, bounds_text
from pycore.asks.verdict_words import LIVE, LOADS, METERED, verdict_words
from pycore.calc.check import Checked
from pycore.calc.finding import Verdict, worst
from pycore.calc.parts_of_limit import part_id
from pycore.ground.units import Manner, show_typed, true_voltage
from pycore.ground.words import say, say_count
from pycore.jobs import Amplifier, Job, Output, Point, Zone

HEAD = {"output": "output_load_w", "amplifier": "pool_load_w", "point": "attenuator_load_w"}


class Desk(NamedTuple):
    """What is at hand while faces are written."""

    checked: Checked
    shown: list[FindingAnswer]
    by_place: dict[str, list[FindingAnswer]]
    names: Mapping[str, str]
    manner: Manner
    order: Mapping[str, int]  # of all findings, the gravest first


# These only tell: what fits counts what is not there yet, the rest is for meter and ear.
TELLING = (
    "zone_load_w",
    "what_fits",
    "zone_loss_10k_db",
    "zone_loss_nominal_db",
    "zone_loss_nearest_db",
    "zone_spread_db",
    "zone_quietest_db",
    "zone_wasteful_section",
    "zone_impedance_ohm",
    "output_line_impedance_ohm",
)


def speaks_for(finding: FindingAnswer) -> bool:
    """Whether a finding has a say in the verdict on its place.

    A line whose cable nobody has entered says nothing of it: that is told as not checked.
    """
    return finding["what"] not in TELLING and finding["code"] != "zone_loss_not_entered"


def faces_of(
    checked: Checked, shown: list[FindingAnswer], *, names: Mapping[str, str], manner: Manner
) -> Faces:
    """The faces of a job and all its things."""
    by_place: dict[str, list[FindingAnswer]] = {}
    for finding in shown:
        if not speaks_for(finding):
            continue
        for place in finding["where"].values():
            by_place.setdefault(place, []).append(finding)
    order = {one["id"]: number for number, one in enumerate(shown)}
    desk = Desk(checked, shown, by_place, names, manner, order)
    things: dict[str, Face] = {}
    for amplifier in checked.job.amplifiers:
        things[amplifier.id] = _amplifier(desk, amplifier)
        for output in amplifier.outputs:
            things[output.id] = _output(desk, output, amplifier=amplifier)
    for zone in checked.job.zones:
        things[zone.id] = _zone(desk, zone)
        for point in zone.line:
            things[point.id] = _point(desk, point)
    return {
        "job": job_face(checked.job, shown, manner=manner),
        "things": things,
        "kinds": kind_faces(checked.job.kinds, kinds_used(checked.job), manner=manner),
    }


def _face(desk: Desk, place: str, *, line: str, concern: Iterable[Iterable[FindingAnswer]]) -> Face:
    """A face from the findings that concern the place; its numbers from its own load."""
    found = (finding for some in concern for finding in some)
    judged = sorted(found, key=lambda one: desk.order[one["id"]])
    verdict = worst([finding["verdict"] for finding in judged])
    speaks = next((one for one in judged if one["verdict"] == verdict != "note"), None)
    own = next((one for one in desk.by_place.get(place, []) if one["what"] in HEAD.values()), None)
    texts = own["shown"] if own else {}
    parts = parts_opened(own)
    face: Face = {
        "title": desk.names.get(place, ""),
        "line": line,
        "detail": "",
        "verdict": verdict,
        "verdict_words": verdict_words(
            speaks["what"] if speaks else "", verdict, manner=desk.manner
        ),
        "reason": speaks["words"] if speaks else "",
        "reason_finding": speaks["id"] if speaks else None,
        "load": texts.get("value", ""),
        "limit": texts.get("limit", ""),
        "share": texts.get("share", ""),
        "share_fraction": own["share_fraction"] if own else None,
        "left": texts.get("left", ""),
        "finding": own["id"] if own else None,
        "share_finding": parts["share_finding"],
        "left_finding": parts["left_finding"],
    }
    by = left_by(own)
    return {**face, "left_by": by} if by else face


def left_by(load: FindingAnswer | None) -> LeftBy | None:
    """What leaves less of a load's limit than the limit itself does."""
    by = load["values"].get("left_by") if load else None
    known: tuple[LeftBy, ...] = ("shared", "feeds")
    return next((one for one in known if one == by), None)


class Opened(TypedDict):
    """What opens the workings of a load's share, and of what is left of its limit."""

    share_finding: str | None
    left_finding: str | None


def parts_opened(load: FindingAnswer | None) -> Opened:
    """The ids of a load's parts, where they are shown."""
    known = load is not None and "share" in load["shown"]
    return {
        "share_finding": part_id(load["id"], "share") if load and known else None,
        "left_finding": part_id(load["id"], "left_w") if load and known else None,
    }


def _amplifier(desk: Desk, amplifier: Amplifier) -> Face:
    pools = amplifier.pools
    if pools:
        total_w = show_typed(sum(pool.w for pool in pools), "w", manner=desk.manner)
        line = say("face", "amplifier", values={"pool_w": total_w}, language=desk.manner.language)
    else:
        one = len(amplifier.outputs) == 1
        code = "amplifier_one" if one else "amplifier_own" if pools == () else "amplifier_not_known"
        line = say("face", code, language=desk.manner.language)
    places = [amplifier.id, *(output.id for output in amplifier.outputs)]
    return _face(desk, amplifier.id, line=line, concern=[desk.by_place.get(p, []) for p in places])


def _output(desk: Desk, output: Output, *, amplifier: Amplifier) -> Face:
    """An output by its own limits and by the watts it shares: with those gone it is not free."""
    texts = {"line_v": show_typed(output.line_v, "v", manner=desk.manner)}
    if output.max_w is not None:
        texts["max_w"] = show_typed(output.max_w, "w", manner=desk.manner)
    code = "output" if output.max_w is not None else "output_no_most"
    line = say("face", code, values=texts, language=desk.manner.language)
    own, shared = desk.by_place.get(output.id, []), _shared(desk, output, amplifier=amplifier)
    return _face(desk, output.id, line=line, concern=[own, shared])


def _shared(desk: Desk, output: Output, *, amplifier: Amplifier) -> list[FindingAnswer]:
    """What is found of the watts an output shares; nothing where it shares none."""
    pools = amplifier.pools or ()
    at = next((number for number, one in enumerate(pools) if output.id in one.outputs), None)
    which = at if len(pools) > 1 else None
    here = desk.by_place.get(amplifier.id, [])
    pooled = [one for one in here if one["what"] == "pool_load_w"]
    return [] if at is None else [one for one in pooled if one["values"].get("which") == which]


def _point(desk: Desk, point: Point) -> Face:
    concern = [desk.by_place.get(point.id, [])]
    face = _face(desk, point.id, line=point_line(point, desk.manner), concern=concern)
    face["detail"] = point_detail(point, desk.names, manner=desk.manner)
    if point.fitted.is_ == "loudspeaker" and point.fitted.tap_at_v is not None:
        face["row_v"] = true_voltage(point.fitted.tap_at_v)
    return face


def _zone(desk: Desk, zone: Zone) -> Face:
    """A zone's own findings, its points', and those of the outputs and amplifiers it loads."""
    outputs = {one for one in (zone.output, zone.page_output) if one is not None}
    amplifiers = {
        amplifier.id
        for amplifier in desk.checked.job.amplifiers
        if outputs & {output.id for output in amplifier.outputs}
    }
    places = [zone.id, *(point.id for point in zone.line), *outputs, *amplifiers]
    count = sum(point.fitted.is_ == "loudspeaker" for point in zone.line)
    texts = {
        "loudspeakers": say_count(
            "face", "loudspeakers", count=count, language=desk.manner.language
        ),
        "output": desk.names.get(zone.output or "", ""),
    }
    code = "zone" if zone.output else "zone_nowhere"
    line = say("face", code, values=texts, language=desk.manner.language)
    face = _face(desk, zone.id, line=line, concern=[desk.by_place.get(p, []) for p in places])
    asked = desk.checked.loads.asked.get((zone.id, "override"))
    if not zone.line:  # with nothing on it there is nothing to call in order
        face["verdict"], face["reason"], face["reason_finding"] = "note", "", None
    elif face["verdict"] == "ok":
        face["reason"], face["reason_finding"] = _zone_in_order(desk, zone), None
        face["verdict_words"] = verdict_words("output_load_w", "ok", manner=desk.manner)
    if asked is not None:
        face["load"] = bounds_text(Bounds(*asked.override), "w", manner=desk.manner)
        face["finding"] = f"zone_load_w:{zone.id}:override"
    return face


def _zone_in_order(desk: Desk, zone: Zone) -> str:
    """What was found in order of a zone: its watts, and its cable where that is entered."""
    own = desk.by_place.get(zone.id, [])
    lost = any(one["what"] == "zone_loss_db" and one["verdict"] == "ok" for one in own)
    code = "zone_ok" if lost else "zone_ok_watts"
    if not lost and any(one.length_m is not None and one.cable is not None for one in zone.line):
        code = "zone_ok_no_end"  # a loss is told of loudspeakers, and none plays on this cable
    return say("face", code, language=desk.manner.language)


def job_face(job: Job, shown: list[FindingAnswer], *, manner: Manner) -> JobFace:
    """The headline of a job: the worst verdict, its reason, and what nobody has checked."""
    language = manner.language
    # without anything on a line there is nothing to call in order
    anything = any(zone.line for zone in job.zones)
    judged = [one for one in shown if anything and speaks_for(one)]
    verdict: Verdict = worst([one["verdict"] for one in judged])
    speaks = next((one for one in judged if one["verdict"] == verdict != "note"), None)
    points = [point for zone in job.zones for point in zone.line]
    count = sum(point.fitted.is_ == "loudspeaker" for point in points)
    counts = {
        "loudspeakers": say_count("face", "loudspeakers", count=count, language=language),
        "zones": say_count("face", "zones", count=len(job.zones), language=language),
    }
    return {
        "title": job.name,
        "line": job.place,
        "verdict": verdict,
        "headline": say("face", _headline(verdict, speaks), language=language),
        "reason": speaks["words"] if speaks else say("face", "no_reason", language=language),
        "not_checked": [say("face", code, language=language) for code in _unchecked(job, shown)],
        "counts": say("face", "job_counts", values=counts, language=language),
        "finding": speaks["id"] if speaks else None,
    }


def _headline(verdict: Verdict, speaks: FindingAnswer | None) -> str:
    """Loads are too much or without reserve, cables lose more than planned, marks disagree, or a
    meter says what must not be connected."""
    if speaks is None or verdict not in ("near", "over") or speaks["what"] in LOADS:
        return f"all_{verdict}"
    if speaks["what"] in (*LIVE, *METERED):
        return f"{'live' if speaks['what'] in LIVE else 'meter'}_{verdict}"
    return f"loss_{verdict}" if speaks["what"] == "zone_loss_db" else f"mark_{verdict}"


def _unchecked(job: Job, shown: list[FindingAnswer]) -> list[str]:
    """What no arithmetic can vouch for, or nobody has entered."""
    points = [point for zone in job.zones for point in zone.line]
    codes = []
    if not points or any(point.length_m is None or point.cable is None for point in points):
        codes.append("unchecked_cable")
    if not any(point.fitted.is_ == "attenuator" for point in points):
        codes.append("unchecked_controls")
    wrong = any(one["what"] == "wrong_voltage" for one in shown)
    codes.append("unchecked_rows_seen" if wrong else "unchecked_row")
    if any(one["code"] == "high_pass_not_known" for one in shown):
        codes.append("unchecked_high_pass")
    codes.append("unchecked_polarity")
    return codes
