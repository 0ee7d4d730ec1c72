"""Verdicts on a line and what they name: the design's own rules, case by case."""

import math

import pytest

from pycore.calc.line import line_findings
from pycore.calc.line_story import line_working
from pycore.calc.solve import point_rows
from tests.samples.halls import PAIR, attenuator, job_of, row_of, told
from tests.samples.lines import make_chain, read_job, speaker


@pytest.mark.parametrize(
    ("length_m", "verdict"), [(110.0, "ok"), (111.0, "near"), (226.0, "near"), (227.0, "over")]
)
def test_the_loss_is_judged_to_the_limit_to_twice_and_beyond(length_m: float, verdict: str) -> None:
    # lumped: 0.5 dB at R/Z = 0.059254 and 1 dB at 0.122018, Z = 49.985 Ω (arithmetic)
    found = told(make_chain([(length_m, 100.0)], cable=PAIR))
    assert found.verdict == verdict
    assert found.code == f"zone_loss_{verdict}"
    assert found.limit == 0.5
    assert found.values["point"] == "p0"


def test_a_loss_exactly_at_the_limit_is_ok() -> None:
    length_m = (10**0.025 - 1) * 70.7**2 / 100 / 26.875 * 1000
    assert told(make_chain([(length_m, 100.0)], cable=PAIR)).verdict == "ok"


def test_a_zone_s_own_limit_goes_before_the_job_s() -> None:
    points = [speaker(0, length_m=150.0, tap_w=100.0)]
    assert told(job_of(points)).verdict == "near"
    assert told(job_of(points, loss_db=1.0)).verdict == "ok"
    assert told(job_of(points, loss_db=0.1)).verdict == "over"


def test_the_same_limit_is_said_as_volts_watts_and_ohms() -> None:
    job = make_chain([(100.0, 100.0)], cable=PAIR)
    values = told(job).values
    assert math.isclose(float(values["limit_volts_fraction"] or 0), 0.055939, abs_tol=1e-6)
    assert math.isclose(float(values["limit_watts_fraction"] or 0), 0.108749, abs_tol=1e-6)
    assert math.isclose(float(values["limit_of_load_fraction"] or 0), 0.059254, abs_tol=1e-6)
    codes = [step.code for step in line_working(job, told(job)).steps]
    assert codes[-4:] == ["limit_volts", "limit_watts", "limit_ohms", "line_loss"]


def test_a_loss_is_told_in_the_order_in_which_one_would_do_it_by_hand() -> None:
    """Load, current, ohms, volts, decibels; a resistive section takes amperes times ohms."""
    job = make_chain([(100.0, 100.0)], cable=PAIR)
    steps = {step.code: step for step in line_working(job, told(job)).steps}
    by_hand = ["line_beyond", "line_current", "line_ohms", "line_across", "line_section"]
    assert [code for code in steps if code in by_hand] == by_hand
    assert list(steps).index("line_path") == list(steps).index("line_section") + 1
    current_a, ohm = steps["line_current"].result, steps["line_ohms"].result
    across_v, at_v = steps["line_across"].result, steps["line_current"].inputs["at_v"].value
    assert math.isclose(across_v, current_a * ohm, rel_tol=1e-6)
    lost_db = steps["line_section"].result
    assert math.isclose(lost_db, 20 * math.log10(70.7 / (70.7 - across_v)), rel_tol=1e-6)
    assert math.isclose(lost_db, steps["line_loss"].result, rel_tol=1e-9)
    assert math.isclose(float(at_v) + across_v, 70.7, rel_tol=1e-6)  # type: ignore[arg-type]


def test_the_worst_loudspeaker_is_named_not_the_farthest() -> None:
    points = [
        speaker(0, length_m=100.0, tap_w=60.0),
        {**speaker(1, length_m=300.0, tap_w=1.0), "after": None},
        {**speaker(2, length_m=20.0, tap_w=60.0), "after": "p0"},
    ]
    assert told(job_of(points)).values["point"] == "p2"


@pytest.mark.parametrize("missing", [{"length_m": None}, {"cable": None}])
def test_an_unknown_section_is_unknown_for_all_that_hangs_on_it(missing: dict[str, None]) -> None:
    points = [speaker(number, length_m=10.0, tap_w=5.0) for number in range(3)]
    points[1].update(missing)
    job = job_of(points)
    found = told(job)
    assert (found.verdict, found.value, found.code) == (
        "unknown",
        None,
        "zone_loss_unknown_section",
    )
    assert found.values["unknown_sections"] == 1
    assert row_of(job, "p0")["loss_db"] is not None
    for point in ("p1", "p2"):
        row = row_of(job, point)
        assert [row[name] for name in ("volts_v", "watts_w", "loss_db", "level_db")] == [None] * 4
    assert told(job, "zone_impedance_ohm").value is None
    assert told(job, "zone_impedance_ohm").verdict == "unknown"
    assert told(job, "zone_loss_10k_db").value is None


def test_a_section_of_no_length_needs_no_cable() -> None:
    points = [speaker(0, length_m=0.0, tap_w=5.0, cable=None)]
    assert told(job_of(points)).value == 0.0
    assert told(job_of(points)).verdict == "ok"


def test_nothing_entered_is_told_apart_from_something_missing() -> None:
    points = [speaker(number, length_m=None, tap_w=5.0, cable=None) for number in range(2)]
    assert told(job_of(points)).code == "zone_loss_not_entered"
    assert told(job_of(points)).verdict == "unknown"


def test_what_is_over_already_stays_over_whatever_is_missing_beyond() -> None:
    points = [speaker(0, length_m=400.0, tap_w=100.0), speaker(1, length_m=None, tap_w=5.0)]
    found = told(job_of(points))
    assert (found.verdict, found.value) == ("over", None)
    assert (found.low or 0) > 1.0


def test_an_unknown_tap_is_bounded_by_its_kind() -> None:
    points = [speaker(0, length_m=100.0, tap_w=5.0), speaker(1, length_m=10.0, tap_w=None)]
    points[1]["fitted"].update({"kind": "k", "tap_at_v": None})
    found = told(job_of(points))
    assert found.value is None
    assert found.verdict == "ok"
    assert found.code == "zone_loss_ok_bounded"
    ends = []
    for tap_w in (2.0, 5.0):
        points[1]["fitted"].update({"tap_w": tap_w, "tap_at_v": 70.7})
        ends.append(told(job_of(points)).value)
    assert [found.low, found.high] == ends


def test_an_unknown_tap_of_an_unknown_kind_bounds_nothing() -> None:
    points = [speaker(0, length_m=100.0, tap_w=5.0), speaker(1, length_m=10.0, tap_w=None)]
    job = job_of(points)
    found = told(job)
    assert (found.verdict, found.value, found.high) == ("unknown", None, None)
    assert found.code == "zone_loss_unknown_load"
    assert row_of(job, "p0")["loss_db"] is None
    assert told(job, "zone_impedance_ohm").value is None


def test_an_existing_part_hides_its_own_cable() -> None:
    part = {"id": "e", "length_m": 10.0, "cable": "c", "fitted": {"is": "existing", "ohm": 120.0}}
    found = told(job_of([part]))
    assert (found.verdict, found.value, found.code) == ("unknown", None, "zone_loss_inside")
    row = row_of(job_of([part]), "e")
    assert math.isclose(row["watts_w"], row["volts_v"] ** 2 / 120.0)
    assert math.isclose(told(job_of([part]), "zone_impedance_ohm").value or 0, 120.26875)


def test_a_control_fails_nothing_but_is_heard() -> None:
    points = [attenuator(None, form="autotransformer", insertion_db=0.5)]
    points.append({**speaker(0, length_m=50.0, tap_w=30.0), "after": "v"})
    job = job_of(points)
    assert told(job).verdict == "ok"
    override, as_set = row_of(job, "p0"), row_of(job, "p0", state="set")
    assert override["level_db"] == pytest.approx(-override["loss_db"])
    assert as_set["level_db"] == pytest.approx(-6.5 - as_set["loss_db"])
    assert as_set["loss_db"] == pytest.approx(override["loss_db"])


def test_an_autotransformer_lightens_the_line_and_a_pad_does_not() -> None:
    reads = {}
    for form in ("autotransformer", "pad"):
        points = [
            attenuator(None, form=form),
            {**speaker(0, length_m=0.0, tap_w=10.0), "after": "v"},
        ]
        reads[form] = told(job_of(points), "zone_impedance_ohm", state="set").value
    # −6 dB: ×3.9811 in ohms by an autotransformer (arithmetic)
    assert reads["pad"] == pytest.approx(499.849)
    assert reads["autotransformer"] == pytest.approx(499.849 * 10**0.6)


def test_a_control_of_unknown_form_reads_between_the_two() -> None:
    points = [attenuator(None), {**speaker(0, length_m=0.0, tap_w=10.0), "after": "v"}]
    found = told(job_of(points), "zone_impedance_ohm", state="set")
    assert found.value is None
    assert found.verdict == "unknown"
    assert found.low == pytest.approx(499.849)
    assert found.high == pytest.approx(499.849 * 10**0.6)
    assert told(job_of(points), "zone_impedance_ohm").value == pytest.approx(499.849)
    row = row_of(job_of(points), "p0", state="set")
    assert row["level_db"] == pytest.approx(-6.0)


def test_an_off_control_silences_its_tail_in_the_set_state_only() -> None:
    points = [attenuator(None, off=True), {**speaker(0, length_m=50.0, tap_w=30.0), "after": "v"}]
    job = job_of(points)
    row = row_of(job, "p0", state="set")
    assert (row["volts_v"], row["watts_w"], row["loss_db"], row["level_db"]) == (0, 0, None, None)
    assert row_of(job, "p0")["watts_w"] > 29
    assert told(job, "zone_impedance_ohm", state="set").code == "zone_impedance_hidden"


def test_a_disconnected_loudspeaker_leaves_its_cable() -> None:
    points = [speaker(number, length_m=50.0, tap_w=30.0) for number in range(2)]
    points[0]["fitted"]["connected"] = False
    job = job_of(points)
    whole = told(make_chain([(100.0, 30.0)], cable=PAIR)).value or 0
    assert told(job).value == pytest.approx(whole)
    assert row_of(job, "p0")["watts_w"] == 0


def test_a_page_moves_a_zone_to_its_other_output() -> None:
    points = [speaker(0, length_m=0.0, tap_w=30.0)]
    job = job_of(points, page_output="o2")
    assert row_of(job, "p0")["watts_w"] == pytest.approx(30 * (100 / 70.7) ** 2)
    assert row_of(job, "p0", state="set")["watts_w"] == pytest.approx(30)


def test_zones_on_an_amplifier_with_ohms_of_its_own_feel_each_other() -> None:
    points = [speaker(0, length_m=0.0, tap_w=100.0)]
    one = job_of(points, source_ohm=5.0)
    load_ohm = 70.7**2 / 100
    assert row_of(one, "p0")["volts_v"] == pytest.approx(70.7 * load_ohm / (load_ohm + 5))
    whole = one.model_dump(mode="json", by_alias=True)
    other = {**whole["zones"][0], "id": "y", "line": [{**points[0], "id": "q"}]}
    both = read_job({**whole, "zones": [whole["zones"][0], other]})
    volts_v = 70.7 * (load_ohm / 2) / (load_ohm / 2 + 5)
    assert row_of(both, "p0")["volts_v"] == pytest.approx(volts_v)
    nominal = next(one for one in line_findings(both) if one.what == "zone_loss_nominal_db")
    assert nominal.value == pytest.approx(20 * math.log10(70.7 / volts_v))
    assert told(one).value == 0.0


def test_the_notes_name_nearest_spread_and_the_costliest_section() -> None:
    job = make_chain([(50.0, 10.0), (30.0, 10.0), (30.0, 10.0)], cable=PAIR)
    rows = {row["point"]: row for row in point_rows(job) if row["state"] == "override"}
    far, near = rows["p2"], rows["p0"]
    nearest = told(job, "zone_loss_nearest_db")
    assert (nearest.values["point"], nearest.values["near"]) == ("p2", "p0")
    assert nearest.value == pytest.approx(float(far["loss_db"] or 0) - float(near["loss_db"] or 0))
    assert told(job, "zone_spread_db").value == pytest.approx(nearest.value)
    waste = told(job, "zone_wasteful_section")
    assert waste.values["section"] == "p0"
    each = [(float(row["watts_w"] or 0), float(row["volts_v"] or 1)) for row in rows.values()]
    watts_w = sum(watts for watts, _ in each)
    amperes = sum(watts / volts for watts, volts in each)
    assert waste.value == pytest.approx(amperes**2 * 0.026875 * 50)
    copper_w = float(waste.values["copper_w"] or 0)
    assert waste.values["in_w"] == pytest.approx(watts_w + copper_w)
    assert waste.values["of_all_fraction"] == pytest.approx(copper_w / (watts_w + copper_w))
    assert waste.value == pytest.approx(float(waste.values["of_copper_fraction"] or 0) * copper_w)


def test_an_output_reads_all_its_lines_side_by_side() -> None:
    one = make_chain([(50.0, 10.0)], cable=PAIR).model_dump(mode="json", by_alias=True)
    point = {**one["zones"][0]["line"][0], "id": "q"}
    other = {**one["zones"][0], "id": "y", "line": [point]}
    both = read_job({**one, "zones": [one["zones"][0], other]})
    single = told(read_job(one), "output_line_impedance_ohm").value or 0
    assert told(both, "output_line_impedance_ohm").value == pytest.approx(single / 2)
    assert told(both, "output_line_impedance_ohm").values["zones"] == 2


def test_a_zone_on_no_output_has_rows_and_no_findings() -> None:
    job = job_of([speaker(0, length_m=5.0, tap_w=5.0)], output=None)
    assert line_findings(job) == ()
    assert row_of(job, "p0")["volts_v"] is None


def test_the_three_seventies_are_one_voltage() -> None:
    plain = told(job_of([speaker(0, length_m=100.0, tap_w=30.0)])).value
    for line_v in (70.0, 70.7, 71.0, 100 / math.sqrt(2)):
        points = [speaker(0, length_m=100.0, tap_w=30.0, fitted={"tap_at_v": line_v})]
        whole = job_of(points).model_dump(mode="json", by_alias=True)
        whole["amplifiers"][0]["outputs"][0]["line_v"] = line_v
        assert told(read_job(whole)).value == plain
