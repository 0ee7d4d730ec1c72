"""Numbers that are only made into findings when somebody opens them. Sums by hand beside."""

import pytest

from tests.drawn import Raw, ask, control, existing, output, raw_job, speaker, zone


def opened(job: Raw, finding: str) -> tuple[str, str, list[str]]:
    """Title, result, and each step on a line."""
    answer = ask("working", {"job": job, "finding": finding})
    return (
        answer["title"],
        answer["result"],
        [f"{step['put_in']} = {step['result']}" for step in answer["steps"]],
    )


def test_sixty_and_seventy_watts_on_one_output_of_120_are_over_and_both_zones_say_so() -> None:
    zones = zone("a", *[speaker(10.0)] * 6), zone("b", *[speaker(10.0)] * 7)
    job = raw_job([output(max_w=120.0)], *zones)
    seen = ask("findings", {"job": job})
    faces = seen["faces"]["things"]
    assert [(faces[one]["load"], faces[one]["verdict"]) for one in "ab"] == [
        ("60 W", "over"),
        ("70 W", "over"),
    ]
    assert "130 W" in faces["a"]["reason"]
    own = [one for one in seen["findings"] if one["what"] == "zone_load_w"]
    assert {one["verdict"] for one in own} == {"note"}
    _, result, steps = opened(job, faces["b"]["finding"])
    # 7 · 10 W
    assert (result, steps[-1]) == ("70 W", "7 × 10 W = 70 W")


def test_a_zone_as_it_is_set_is_told_apart_only_where_it_differs() -> None:
    wall = control(-6.0, form="autotransformer", insertion_db=0.0)
    job = raw_job([output()], zone("a", wall, speaker(10.0)), zone("b", speaker(10.0)))
    own = [one["id"] for one in ask("findings", {"job": job})["findings"]]
    assert [one for one in own if one.startswith("zone_load_w")] == [
        "zone_load_w:a:override",
        "zone_load_w:b:override",
        "zone_load_w:a:set",
    ]
    # an ideal transformer 6 dB down shows its line 10^(-0.6) of the load
    assert opened(job, "zone_load_w:a:set")[1] == "2.51 W"


def test_a_share_and_what_is_left_are_told_from_the_load() -> None:
    job = raw_job([output(max_w=120.0)], zone("a", *[speaker(7.5)] * 4))
    title, result, steps = opened(job, "output_load_share:o1:override")
    assert (title, result) == ("amp: share of its watts", "25 %")
    assert steps[-2:] == ["4 × 7.5 W = 30 W", "30 W / 120 W = 25 %"]
    _, result, steps = opened(job, "output_load_left_w:o1:override")
    assert (result, steps[-1]) == ("90 W", "the larger of (0, 120 W − 30 W) = 90 W")


def test_of_too_much_nothing_is_left() -> None:
    job = raw_job([output(max_w=20.0)], zone("a", *[speaker(7.5)] * 4))
    _, result, steps = opened(job, "output_load_left_w:o1:override")
    assert (result, steps[-1]) == ("0 W", "the larger of (0, 20 W − 30 W) = 0 W")


def test_a_range_is_told_at_its_most_and_without_a_most_at_its_least() -> None:
    job = raw_job([output(max_w=100.0)], zone("a", existing(ohm=120.0)))
    # 70.7² / 120 = 41.65 W; 1.3 times that is 54.15 W
    assert opened(job, "output_load_share:o1:override")[1] == "at most 54.2 %"
    job = raw_job([output(max_w=100.0)], zone("a", speaker(25.0), speaker(None)))
    _, result, steps = opened(job, "output_load_share:o1:override")
    assert (result, steps[-1]) == ("at least 25 %", "25 W / 100 W = 25 %")


def tally(**more: object) -> Raw:
    """Six of 5 W and two of 10 W on two outputs of 60 W that share 70 W."""
    body: Raw = {
        "line_v": "70.7",
        "amplifier_w": "70",
        "outputs": [{"max_w": "60"}, {"max_w": "60"}],
        "name": "Tally",
        "rows": [
            {"count": "6", "tap_w": "5", "output": 0},
            {"count": "many", "tap_w": "5", "output": 0},
            {"count": "2", "tap_w": "10", "output": 1},
            {"count": "3", "tap_w": "2,5", "output": 0},
        ],
        "ids": {"job": "k7f1", "hand": "k7f", "next": 2},
    }
    return ask("tally", {**body, **more})


def test_each_row_of_a_tally_opens_and_a_row_that_cannot_be_read_does_not() -> None:
    told = tally()
    rows = told["rows"]
    assert [one["sum"] for one in rows] == ["30 W", "", "20 W", "7.5 W"]
    assert rows[1]["finding"] is None
    results = [opened(told["job"], rows[at]["finding"]) for at in (0, 2, 3)]
    assert [(one[1], one[2][-1]) for one in results] == [
        ("30 W", "6 × 5 W = 30 W"),
        ("20 W", "2 × 10 W = 20 W"),
        ("7.5 W", "3 × 2.5 W = 7.5 W"),
    ]


def test_the_figures_of_a_tally_open_each_to_its_own_working() -> None:
    told = tally()
    summary = told["summary"]
    ends = {
        name: opened(told["job"], summary[name])[2][-1]
        for name in ("finding", "share_finding", "left_finding")
    }
    assert ends == {
        "finding": "37.5 W + 20 W = 57.5 W",
        "share_finding": "57.5 W / 70 W = 82.1 %",
        # the outputs could take 60 W less 37.5 and 60 less 20: more than the shared watts leave
        "left_finding": "the smaller of (12.5 W, 62.5 W) = 12.5 W",
    }


def test_a_count_names_the_limit_and_tells_its_load_before_and_after() -> None:
    read = [("6", "5", 0), ("2", "10", 1), ("3", "2.5", 0)]
    told = tally(rows=[{"count": n, "tap_w": w, "output": at} for n, w, at in read])
    words = "Line A · no reserve: 2 at 5"
    fit = next(one for one in told["summary"]["fits"] if one["words"].startswith(words))
    answer = ask("working", {"job": told["job"], "finding": fit["finding"]})
    assert answer["result"] == "0 with reserve, 2 to the rating"
    steps = [(one["title"], f"{one['put_in']} = {one['result']}") for one in answer["steps"]]
    # 80 % of 70 W are 56 W: passed already; 57.5 W and two of 5 W are 67.5 W, three 72.5 W
    assert steps[1:] == [
        ("Amplifier: shared watts, what is planned for at most", "70 W × 80 % = 56 W"),
        ("Amplifier: shared watts, as it is: past it already", "57.5 W + 0 × 5 W = 57.5 W"),
        ("As a share of what is there", "57.5 W / 70 W = 82.1 %"),
        (
            "Amplifier: shared watts, with 1 more: past what is planned for",
            "57.5 W + 1 × 5 W = 62.5 W",
        ),
        ("As a share of what is there", "62.5 W / 70 W = 89.3 %"),
        ("Amplifier: shared watts, with 2 more: within the rating", "57.5 W + 2 × 5 W = 67.5 W"),
        ("As a share of what is there", "67.5 W / 70 W = 96.4 %"),
        ("Amplifier: shared watts, with 3 more: past the rating", "57.5 W + 3 × 5 W = 72.5 W"),
        ("As a share of what is there", "72.5 W / 70 W = 104 %"),
        (
            "Amplifier · Output A: load, with 2 more: asked too, and kept",
            "37.5 W + 2 × 5 W = 47.5 W",
        ),
        ("As a share of what is there", "47.5 W / 60 W = 79.2 %"),
    ]
    assert any("asked again" in one for one in answer["assumptions"])


@pytest.mark.parametrize("finding", ["row_load_w:x:override:y", "output_load_share:o9:set"])
def test_what_is_not_there_says_so(finding: str) -> None:
    job = raw_job([output(max_w=20.0)], zone("a", speaker(7.5)))
    answer = ask("working", {"job": job, "finding": finding})
    assert answer["problem"]["code"] == "finding_gone"


def test_a_number_is_explained_as_it_would_be_and_the_job_stays_as_it_is() -> None:
    job = raw_job([output(max_w=60.0)], zone("a", speaker(5.0), speaker(5.0)))
    command = {"do": "set_tap", "point": "a-1", "tap_w": 20.0, "tap_at_v": 70.7}
    body = {"job": job, "finding": "zone_load_w:a:override"}
    assert ask("working", body)["result"] == "10 W"
    would = ask("working", {**body, "commands": [command]})
    assert (would["result"], would["steps"][-1]["put_in"]) == ("25 W", "20 W + 5 W")
    # what was typed goes into the commands as in an edit
    typed = {"commands": [{**command, "tap_w": None}], "typed": {}}
    assert ask("working", {**body, **typed})["result"] == "at least 5 W"


def test_louder_by_the_watts_by_the_kind_and_by_the_cable() -> None:
    kinds = [
        {"id": kind, "name": kind, "sensitivity_db": level, "transformer_loss_db": 1.0, "taps": []}
        for kind, level in (("near", 90.0), ("loud", 94.0))
    ]
    job = raw_job([output()], zone("a", speaker(5.0, kind="near")), kinds={"loudspeakers": kinds})
    swap: Raw = {"do": "swap_loudspeaker", "point": "a-1", "kind": kinds[1]}
    swap |= {"tap_w": 2.5, "tap_at_v": 70.7}
    answer = ask("working", {"job": job, "finding": "sound_change_db:a-1", "commands": [swap]})
    # 10·log10(2.5 / 5) + (94 − 1) − (90 − 1), the decibel by its definition
    assert answer["result"] == "+0.99 dB"
    assert [step["result"] for step in answer["steps"]] == [
        "5 W", "2.5 W", "×0.5", "−3.01 dB", "89 dB", "93 dB", "4 dB", "0.99 dB",
    ]  # fmt: skip
    assert any("only the watts" in one for one in answer["assumptions"])


def test_a_command_that_does_not_fit_is_refused_as_in_an_edit() -> None:
    job = raw_job([output()], zone("a", speaker(5.0)))
    body = {"job": job, "finding": "zone_load_w:a:override"}
    refused = ask("working", {**body, "commands": [{"do": "set_tap", "point": "nobody"}]})
    assert refused["problem"]["where"]["point"] == "nobody"


def test_what_if_counts_the_taps_marked_for_another_voltage_and_each_side_opens() -> None:
    zones = zone("a", *[speaker(5.0)] * 4), zone("b", *[speaker(5.0)] * 3, speaker(5.0, 100.0))
    job = raw_job([output(max_w=120.0)], *zones)
    change = {"is": "voltage", "output": "o1", "line_v": 100.0}
    rows = ask("what_if", {"job": job, "change": change})["rows"]
    marks = next(one for one in rows if one["title"] == "Taps marked for another voltage")
    # a 100 V tap on 70.7 V is only quieter; seven 70.7 V taps on 100 V draw double
    assert (marks["before"], marks["verdict_before"]) == ("1", "note")
    assert (marks["after"], marks["verdict_after"]) == ("7", "over")
    now = ask("working", {"job": job, "finding": marks["finding_before"]})
    assert [step["put_in"] for step in now["steps"]] == ["(70.7 V / 100 V)²", "1"]
    then = ask("working", {"job": job, "finding": marks["finding_after"], "change": change})
    assert [f"{step['put_in']} = {step['result']}" for step in then["steps"]] == [
        "(100 V / 70.7 V)² = ×2",
        "4 + 3 = 7",
    ]


def test_every_side_of_what_if_opens_to_the_number_it_shows() -> None:
    wall = control(rated_w=35.0, rated_at_v=100.0)
    job = raw_job([output(max_w=60.0)], zone("a", wall, speaker(10.0), speaker(5.0)))
    change = {"is": "more", "zone": "a", "run": None, "tap_w": 10.0, "tap_at_v": 70.7}
    asked: Raw = {"change": change, "typed": {"run": "2"}}
    rows = ask("what_if", {"job": job, **asked})["rows"]
    assert rows
    for row in rows:
        for side, more in (("before", {}), ("after", asked)):
            told = ask("working", {"job": job, "finding": row[f"finding_{side}"], **more})
            assert told["result"] == row[side]


def test_ohms_that_lie_in_a_range_are_told_from_the_least_to_the_most_and_then_the_number() -> None:
    part = {**existing(ohm=120.0), "label": "old part"}
    job = raw_job([output(max_w=100.0)], zone("a", part))
    job["zones"][0]["line"][0] |= {"length_m": 0.0}
    answer = ask("working", {"job": job, "finding": "zone_impedance_ohm:a:override"})
    # 120 Ω, planned as 0.9 to 1.3 times its watts (common practice, no source)
    ends = [(one["title"], one["result"]) for one in answer["steps"] if "reads" in one["title"]]
    assert answer["result"] == "120 Ω (92.3 Ω to 133 Ω)"
    assert ends == [
        ("What it reads at least", "92.3 Ω"),
        ("What it reads at most", "133 Ω"),
        ("What the meter reads", "120 Ω"),
    ]
