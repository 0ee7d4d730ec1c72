"""What a person reads when they open a number: the steps, in order, with what was put in."""

from tests.drawn import Raw, ask, control, existing, output, raw_job, speaker, zone

LINE = [output("o1", max_w=60.0, min_load_ohm=80.0)]


def story(finding: str, *zones: Raw, **more: object) -> Raw:
    """The working of one finding of a job on one output."""
    job = raw_job(LINE, *zones, **more)  # type: ignore[arg-type]
    return ask("working", {"job": job, "finding": finding})


def told(answer: Raw) -> list[str]:
    """Each step on a line: what was put in, and what came out."""
    return [f"{step['put_in']} = {step['result']}" for step in answer["steps"]]


def test_a_load_is_told_from_its_taps_up() -> None:
    answer = story("output_load_w:o1:override", zone("a", speaker(5.0), speaker(5.0, 100.0)))
    assert (answer["title"], answer["result"]) == ("amp: load", "7.5 W")
    assert told(answer) == [
        "5 W × (70.7 V / 70.7 V)² = 5 W",
        "5 W × (70.7 V / 100 V)² = 2.5 W",
        "5 W + 2.5 W = 7.5 W",
    ]


def test_two_zones_are_added_up_each_and_then_together() -> None:
    zones = zone("a", *[speaker(5.0)] * 2), zone("b", *[speaker(5.0)] * 3)
    answer = story("output_load_w:o1:override", *zones)
    assert told(answer)[1:] == ["2 × 5 W = 10 W", "3 × 5 W = 15 W", "10 W + 15 W = 25 W"]


def test_a_control_is_told_with_its_setting_and_its_own_loss() -> None:
    wall = control(-6.0, form="autotransformer", insertion_db=0.5, label="Wall")
    answer = story("output_load_w:o1:set", zone("a", wall, speaker(10.0)))
    assert told(answer)[1:] == [
        "10 W = 10 W",
        "−6 dB − 0.5 dB = −6.5 dB",
        "10 ^ (−6.5 dB / 10) = ×0.224",
        "10 W × 0.224 = 2.24 W",
    ]


def test_what_a_control_may_carry_is_told_where_it_was_worked_out() -> None:
    wall = control(rated_w=35.0, rated_at_v=100.0)
    answer = story("attenuator_load_w:a-1:override", zone("a", wall, speaker(10.0)))
    assert told(answer)[0] == "35 W × 70.7 V / 100 V = 24.7 W"
    wall = control(rated_w=35.0, rated_at_v=70.7)
    answer = story("attenuator_load_w:a-1:override", zone("a", wall, speaker(10.0)))
    assert told(answer)[0] == "10 W × (70.7 V / 70.7 V)² = 10 W"


def test_a_measured_part_is_told_with_what_to_plan_for() -> None:
    answer = story("output_load_w:o1:override", zone("a", existing(ohm=120.0)))
    assert answer["result"] == "41.7 W (37.5 W to 54.2 W)"
    assert told(answer)[0] == "70.7 V² / 120 Ω = 41.7 W"
    assert [one.rsplit(" = ", 1)[1] for one in told(answer)] == [
        "41.7 W",
        "37.5 W",
        "54.2 W",
        "37.5 W",
        "54.2 W",
        "41.7 W",
    ]
    assert any("common practice" in text for text in answer["assumptions"])


def test_ohms_are_told_from_the_most_watts_to_the_least() -> None:
    kind = {"id": "c", "name": "c", "taps": [{"w": 5.0, "at_v": 70.7}, {"w": 10.0, "at_v": 70.7}]}
    answer = story(
        "output_impedance_ohm:o1:override",
        zone("a", speaker(None, kind="c")),
        kinds={"loudspeakers": [kind]},
    )
    assert told(answer)[-3:] == ["70.7 V² / 10 W = 500 Ω", "5 W = 5 W", "70.7 V² / 5 W = 1000 Ω"]


def test_every_input_says_where_it_came_from() -> None:
    answer = story("output_load_w:o1:override", zone("a", speaker(5.0)))
    origins = [(one["name"], one["origin"]) for one in answer["steps"][0]["inputs"]]
    assert origins == [
        ("tap", "as entered"),
        ("line", "as entered"),
        ("marked at", "as entered"),
    ]
    assert answer["steps"][0]["source"].startswith("Ohm's law")


def test_a_working_of_a_finding_that_is_gone_says_so() -> None:
    answer = story("output_load_w:gone:override", zone("a", speaker(5.0)))
    assert answer["problem"]["code"] == "finding_gone"
