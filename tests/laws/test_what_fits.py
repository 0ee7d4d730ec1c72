"""What still fits agrees with putting it in and asking every limit again."""

from hypothesis import given

from pycore.calc.check import check_job
from pycore.calc.finding import Finding
from pycore.calc.fits import MOST_COUNTED
from pycore.calc.judge import Limit
from pycore.calc.limits import limits_of, loads_of
from pycore.calc.story import working_of
from pycore.edit import apply, read_command
from pycore.jobs import Job, Zone
from pycore.jobs.tree import hanging_order
from tests.strategies import jobs, words_of

Verdicts = dict[tuple[str, str, str, object], str]


def add_more(job: Job, zone: Zone, finding: Finding, count: int) -> Job:
    """The job with `count` more at the far end of a zone, put in by the command itself."""
    order = hanging_order(zone.line)
    after = order[-1].id if order else None
    points = []
    for number in range(count):
        fitted = {
            "is": "loudspeaker",
            "kind": finding.values["kind"],
            "label": "",
            "connected": True,
        }
        fitted |= {"tap_w": finding.values["tap_w"], "tap_at_v": finding.values["tap_at_v"]}
        points.append({"id": f"new{number}", "after": after, "fitted": fitted})
        after = f"new{number}"
    for start in range(0, count, 500):
        some = points[start : start + 500]
        command = {"do": "add_points", "zone": zone.id, "points": some, "splice": False}
        job = apply(job, read_command(words_of(command)))
    return job


def place_of(limit: Limit) -> str:
    """The id of the thing a limit belongs to."""
    return next(iter(limit.where.values()))


def verdicts_of(job: Job) -> Verdicts:
    """The verdict of every limit of watts and ohms that has a number to be judged by."""
    return {
        (limit.what, place_of(limit), limit.state, limit.values.get("which")): limit.verdict()
        for limit in limits_of(loads_of(job))
        if limit.most_w is not None or limit.min_load_ohm is not None or limit.forbidden
    }


def changed_limits(before: Verdicts, after: Verdicts, allowed: tuple[str, ...]) -> list[str]:
    """The limits that were inside and no longer are."""
    return [str(one) for one in after if before[one] in allowed and after[one] not in allowed]


def check_count(job: Job, finding: Finding, count: int, allowed: tuple[str, ...]) -> None:
    """So many keep every limit that was kept, and one more breaks one."""
    zone = next(zone for zone in job.zones if zone.id == finding.where["zone"])
    before = verdicts_of(job)
    with_all = verdicts_of(add_more(job, zone, finding, count))
    assert changed_limits(before, with_all, allowed) == []
    if count < MOST_COUNTED:
        with_one_more = verdicts_of(add_more(job, zone, finding, count + 1))
        first = (finding.values["first_what"], finding.values["first_id"])
        broken = [one for one in with_one_more if with_one_more[one] not in allowed]
        assert broken, finding.id
        assert allowed == ("ok",) or first in [one[:2] for one in broken]


@given(jobs(most_points=4, sure=True))
def test_the_counts_are_what_the_command_itself_would_show(job: Job) -> None:
    for finding in check_job(job).findings:
        if finding.what != "what_fits" or finding.value is None or finding.high is None:
            continue
        assert finding.value <= finding.high
        check_count(job, finding, int(finding.value), ("ok",))
        check_count(job, finding, int(finding.high), ("ok", "near"))


@given(jobs(most_points=4, sure=True))
def test_the_working_of_a_count_ends_past_the_limit(job: Job) -> None:
    checked = check_job(job)
    for finding in checked.findings:
        if finding.what != "what_fits" or finding.values["first_id"] is None:
            continue
        limit = next(
            one
            for one in checked.limits
            if (one.what, one.state, one.values.get("which"))
            == tuple(finding.values[name] for name in ("first_what", "first_state", "first_which"))
            and finding.values["first_id"] in one.where.values()
        )
        told = {made.code: made for made in working_of(checked, finding).steps}
        if "fits_forbidden" in told:
            continue
        last = told.get("fits_in_rating") or told["fits_already"]
        assert last.values["n"] == f"{finding.high:.0f}"
        assert last.values["place"] == finding.values["first_id"]
        keeps, breaks = last.result, told["fits_past_rating"].result
        assert breaks >= keeps
        if limit.most_w is not None and limit.what != "output_impedance_ohm":
            assert finding.high == 0 or keeps <= limit.most_w * (1 + 1e-9)
            assert breaks > limit.most_w * (1 - 1e-9) or finding.high == MOST_COUNTED


@given(jobs())
def test_a_count_is_not_known_where_a_load_is_not(job: Job) -> None:
    checked = check_job(job)
    for finding in checked.findings:
        if finding.what == "what_fits" and finding.verdict == "note":
            zone = finding.where["zone"]
            limits = [limit for limit in checked.limits if zone in limit.zones]
            assert limits
            assert "unknown" not in {limit.verdict() for limit in limits}
