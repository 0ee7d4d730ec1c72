"""Every answer about the choice of a cable has its words."""

from typing import get_args

from pycore.calc.choice import CableChoice, LongestRun, Pick, Refused, WhyNot
from pycore.calc.rescue import Rescue, Way
from pycore.ground.words.en_line import CHOICES


def test_every_answer_of_a_choice_has_words() -> None:
    wanted = {f"refused_{one}" for one in (*get_args(Refused), "cables_unknown", "nothing_passes")}
    wanted |= {f"why_not_{one}" for one in get_args(WhyNot)}
    wanted |= {f"rescue_{one}" for one in get_args(Way)}
    assert wanted | {"pick", "pick_none", "step_up", "longest"} == set(CHOICES)


def test_the_words_name_only_what_an_answer_holds() -> None:
    held = {*CableChoice._fields, *LongestRun._fields, *Pick._fields, *Rescue._fields}
    held |= {"section", "gain_db"}
    for text in CHOICES.values():
        names = {part.split("}")[0] for part in text.split("{")[1:]}
        assert names <= held
