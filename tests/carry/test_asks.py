"""Links, codes, files and comparisons through the one door, with words a person reads."""

import json
import re
from typing import Any

import pytest

from pycore import __version__
from pycore.door import handle
from pycore.ground.words import ENGLISH
from pycore.jobs import AttenuatorKind, CableKind, Job, LoudspeakerKind, Reading
from tests.carry.acts import BASE, P, do
from tests.carry.sizes import make_large
from tests.drawn import as_read
from tests.house.files import ROOT
from tests.samples.travellers import make_traveller

OFFICE = do(BASE, do="set_tap", point=P[1], tap_w=10.0, tap_at_v=100.0)
LADDER = do(
    do(BASE, do="set_tap", point=P[1], tap_w=5.0, tap_at_v=100.0), do="disconnect", point=P[2]
)


def raw(job: Job) -> Any:
    """A job as the page holds it."""
    return json.loads(job.model_dump_json(exclude_none=True))


def ask(name: str, **body: Any) -> Any:
    """What the door answers: the body, or the problem."""
    manner = {"language": "en", "length": "ft", "decimal": ",", "today": "2026-11-25"}
    request = {"n": 3, "ask": name, "manner": manner, "body": body}
    answer = as_read(json.loads(handle(json.dumps(request))))
    return answer.get("body", answer.get("problem"))


def test_a_link_goes_out_and_comes_back_with_all_the_page_shows() -> None:
    written = ask("write_link", job=raw(BASE))
    assert written["characters"] == len(written["text"])
    assert (written["too_long"], written["advice"]) == (False, None)
    read = ask("read_link", text=f"https://rungline.example/#{written['text']}")
    assert Job.model_validate_json(json.dumps(read["job"])) == BASE
    assert read["made_by"] == __version__
    assert read["print"] == ask("prints", jobs=[raw(BASE)])["prints"][0]
    assert read["faces"]["job"]["counts"] == "18 loudspeakers in 2 zones"


def test_a_long_link_comes_with_advice_and_a_very_long_one_with_the_file() -> None:
    long = ask("write_link", job=raw(make_traveller(300, free_labels=True, ticked=False)))
    assert (long["too_long"], "Some messengers" in long["advice"]) == (False, True)
    very = ask("write_link", job=raw(make_traveller(1100, free_labels=True, ticked=False)))
    assert (very["too_long"], "Send the file" in very["advice"]) == (True, True)
    refused = ask("write_link", job=raw(make_large()))
    assert "file" in refused["remedy"]


def test_a_code_or_the_file_instead() -> None:
    code = ask("qr", text="https://rungline.example/#" + ask("write_link", job=raw(BASE))["text"])
    assert (code["size"], code["too_large"], code["words"]) == (len(code["rows"]), False, None)
    large = ask("qr", text="x" * 2000)
    assert (large["rows"], large["too_large"]) == ([], True)
    assert "file" in large["words"]


def test_all_jobs_go_into_a_file_with_the_day_and_come_back() -> None:
    saved = ask("save_all", jobs=[raw(BASE), raw(OFFICE)])
    assert saved["file_name"] == "rungline-jobs-2026-11-25.json"
    opened = ask("open_all", text=saved["text"])
    assert opened == {"jobs": [raw(BASE), raw(OFFICE)], "refused": []}
    bad = ask("open_all", text=saved["text"].replace('"rev":87', '"rev":-1', 1))
    assert bad["jobs"] == [raw(OFFICE)]
    assert bad["refused"][0]["problem"]["words"]


def test_a_comparison_reads_as_sentences_in_the_manner_of_the_person() -> None:
    longer = do(LADDER, do="change_point", point=P[3], changes={"length_m": 3.048})
    found = ask("compare", mine=raw(OFFICE), theirs=raw(longer), base=raw(BASE))
    words = {change["id"]: change["words"] for change in found["changes"]}
    taps = [fitted_tap(job) for job in (OFFICE, LADDER, BASE)]
    assert words[f"point.{P[1]}.tap"] == "Tap: {} here, {} there, {} before.".format(*taps)
    assert words[f"point.{P[2]}.connected"] == "Connected: yes → no, changed there."
    assert re.fullmatch(r"Length of the run to it: [\d,]+ ft → 10 ft, changed there\.",
                        words[f"point.{P[3]}.length_m"])  # fmt: skip
    assert found["relation"] == "apart_known"
    assert found["counts"] == {"mine": 0, "theirs": 2, "both": 0, "clash": 1, "differs": 0}
    assert {change["title"] for change in found["changes"]} == {"Foyer 2", "Foyer 3", "Foyer 4"}


def test_where_only_one_side_changed_nobody_is_told_that_both_did() -> None:
    longer = do(BASE, do="change_point", point=P[3], changes={"length_m": 3.048})
    mine = ask("compare", mine=raw(longer), theirs=raw(BASE), base=raw(BASE))
    theirs = ask("compare", mine=raw(BASE), theirs=raw(longer), base=raw(BASE))
    assert (mine["relation"], theirs["relation"]) == ("only_mine", "only_theirs")
    assert "both" not in (mine["words"] + theirs["words"]).lower()


def test_a_link_is_as_long_as_what_is_sent_with_its_address() -> None:
    address = "https://rungline.example/#"
    bare, whole = (ask("write_link", job=raw(BASE), address=one) for one in ("", address))
    assert bare["text"] == whole["text"]
    assert whole["characters"] == len(address + whole["text"])
    assert bare["characters"] == len(bare["text"])


def fitted_tap(job: Job) -> str:
    """The tap of the second point, as it is shown."""
    fitted = job.zones[0].line[1].fitted
    assert fitted.is_ == "loudspeaker"
    return f"{fitted.tap_w:g} W at 100 V".replace(".", ",")


def test_a_state_that_grew_from_mine_is_ahead_and_mine_is_behind_it() -> None:
    mine = ask("prints", jobs=[raw(BASE)])["prints"][0]
    theirs = raw(LADDER) | {"base": {"rev": BASE.rev, "print": mine}}
    assert ask("compare", mine=raw(BASE), theirs=theirs)["relation"] == "ahead"
    assert ask("compare", mine=theirs, theirs=raw(BASE))["relation"] == "behind"
    assert ask("compare", mine=raw(OFFICE), theirs=theirs)["relation"] == "apart"
    assert ask("compare", mine=raw(BASE), theirs=raw(BASE))["relation"] == "same"


def test_a_merge_is_seen_and_says_what_it_grew_from() -> None:
    refused = ask("merge", mine=raw(OFFICE), theirs=raw(LADDER), base=raw(BASE))
    assert refused["where"] == {"change": f"point.{P[1]}.tap"}
    taken = {f"point.{P[1]}.tap": "theirs"}
    merged = ask("merge", mine=raw(OFFICE), theirs=raw(LADDER), base=raw(BASE), taken=taken)
    assert merged["job"]["base"]["print"] == ask("prints", jobs=[raw(LADDER)])["prints"][0]
    assert merged["job"]["rev"] == LADDER.rev + 1
    assert merged["findings"]
    assert ask("prints", jobs=[merged["job"]]) == ask("prints", jobs=[raw(LADDER)])


@pytest.mark.parametrize("folder", ["pycore/carry", "pycore/edit"])
def test_every_problem_raised_here_has_words_and_links_have_a_remedy(folder: str) -> None:
    codes = set()
    for path in sorted((ROOT / folder).rglob("*.py")):
        text = path.read_text(encoding="utf-8")
        codes |= set(re.findall(r'(?:BadText|TooLarge|NewerJob|_refused)\(\s*"(\w+)"', text))
        codes |= set(re.findall(r'"(merge_\w+|change_unknown)"', text))
    assert codes
    assert codes <= set(ENGLISH["problem"])
    ours = {code for code in codes if code.startswith(("link_", "merge_"))}
    assert ours <= set(ENGLISH["problem_remedy"])


DATA = (CableKind, LoudspeakerKind, AttenuatorKind, Reading)


def test_other_data_of_a_kind_are_told_field_by_field() -> None:
    kind = raw(BASE)["kinds"]["loudspeakers"][0]
    taps = [{"w": 4.0, "at_v": 100.0}, {"ohm": 8.0, "at_v": 70.7}]
    other = do(
        BASE, do="use_kind", family="loudspeakers", kind=kind | {"taps": taps, "rated_w": 8.0}
    )
    (change,) = ask("compare", mine=raw(BASE), theirs=raw(other), base=raw(BASE))["changes"]
    assert (change["what"], change["title"]) == ("Kind of loudspeaker", "ceiling 6 W, 90°")
    assert change["theirs"] == "Rated watts: 8 W · Taps: 4 W at 100 V, 8 Ω at 70,7 V"
    assert change["mine"].startswith("Rated watts: 6 W · Taps: 6 W at 100 V, 3 W at 100 V")


def test_taps_that_differ_in_their_position_alone_are_told_apart() -> None:
    kind = raw(BASE)["kinds"]["loudspeakers"][0]
    first, *others = kind["taps"]
    taps = [first | {"position": "red", "allowed": False}, *others]
    other = do(BASE, do="use_kind", family="loudspeakers", kind=kind | {"taps": taps})
    (change,) = ask("compare", mine=raw(BASE), theirs=raw(other), base=raw(BASE))["changes"]
    assert change["mine"].startswith("Taps: 6 W at 100 V, 3 W")
    assert change["theirs"].startswith("Taps: red: 6 W at 100 V, not to be used, 3 W")


def test_a_zone_only_there_says_with_how_much() -> None:
    gone = do(BASE, do="remove_zone", zone=BASE.zones[1].id)
    (change,) = ask("compare", mine=raw(gone), theirs=raw(BASE))["changes"]
    assert (change["mine"], change["theirs"]) == ("no", "yes, with 6 loudspeakers")
    assert (change["what"], change["words"]) == ("Zone", "Only there.")


def test_every_cell_and_side_of_a_change_has_words() -> None:
    from pycore.carry.saved import open_saved
    from pycore.edit.cells import take_apart
    from tests.carry.test_old_links import KEPT

    job = open_saved((KEPT / "codec_1.json").read_text(encoding="utf-8"))
    cells = {cell for thing in take_apart(job).values() for cell in thing.cells}
    assert cells - {"is"} <= set(ENGLISH["change_field"])
    assert {key.family for key in take_apart(job)} <= set(ENGLISH["change_thing"])
    sorts = {point.fitted.is_ for zone in job.zones for point in zone.line}
    assert {f"point.{sort}" for sort in sorts} <= set(ENGLISH["change_thing"])
    data = {name for kind in DATA for name in kind.model_fields} - {"id"}
    assert data <= set(ENGLISH["change_field"])
    other = raw(job) | {"zones": [], "amplifiers": [], "name": "else", "readings": []}
    for base in (raw(job), other, None):
        for mine, theirs in ((raw(job), other), (other, raw(job)), (raw(job), raw(job))):
            body = {"mine": mine, "theirs": theirs} | ({"base": base} if base else {})
            assert all(change["words"] for change in ask("compare", **body)["changes"])
