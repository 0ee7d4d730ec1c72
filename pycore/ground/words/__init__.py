"""Words in one place: a code and its values become a sentence, in one language.

A sentence is never built from pieces: each code has its own whole template. The page's
own words come from the same tables.
"""

import re
from collections.abc import Mapping
from functools import lru_cache
from string import Formatter

from pycore.ground.plain import isolated, kept_together
from pycore.ground.words import (
    en_assumptions,
    en_baselines,
    en_cabling,
    en_catalogue,
    en_faces,
    en_findings,
    en_kinds,
    en_line,
    en_links,
    en_meter,
    en_meter_acts,
    en_meter_run,
    en_page,
    en_page_kinds,
    en_page_line,
    en_page_meter,
    en_page_share,
    en_page_test,
    en_problems,
    en_steps,
    en_together,
)

ENGLISH: dict[str, dict[str, str]] = {
    "page": en_page.PAGE
    | en_page_kinds.PAGE
    | en_page_line.PAGE
    | en_page_meter.PAGE
    | en_page_test.PAGE
    | en_page_share.PAGE
    | en_baselines.PAGE
    | en_together.PAGE,
    "finding": en_findings.FINDINGS | en_line.FINDINGS | en_cabling.FINDINGS,
    "remedy": en_findings.REMEDIES | en_line.REMEDIES,
    "title": en_findings.TITLES | en_line.TITLES | en_cabling.TITLES,
    "problem": en_problems.PROBLEMS
    | en_links.PROBLEMS
    | en_cabling.PROBLEMS
    | en_meter_acts.PROBLEMS
    | en_meter_run.PROBLEMS
    | en_baselines.PROBLEMS,
    "problem_remedy": en_problems.REMEDIES
    | en_links.REMEDIES
    | en_cabling.REMEDIES
    | en_meter_acts.REMEDIES
    | en_meter_run.REMEDIES
    | en_baselines.REMEDIES,
    "step": en_steps.STEPS
    | en_line.STEPS
    | en_cabling.STEPS
    | en_meter_acts.STEP_TITLES
    | en_meter_run.DISTANCE_STEPS,
    "name": en_steps.NAMES
    | en_line.NAMES
    | en_cabling.NAMES
    | en_meter_acts.STEP_NAMES
    | en_meter_run.DISTANCE_NAMES,
    "origin": en_steps.ORIGINS,
    "seen": en_steps.SEEN,
    "assumption": en_assumptions.ASSUMPTIONS | en_line.ASSUMPTIONS,
    "face": en_faces.FACES,
    "verdict": en_faces.VERDICTS,
    "kind": en_kinds.KINDS,
    "catalogue": en_catalogue.NAMES | en_line.CABLES,
    "choice": en_line.CHOICES | en_cabling.CHOICES,
    "drawing": en_cabling.DRAWING,
    "effect": en_cabling.EFFECTS,
    "what_if": en_cabling.WHAT_IF,
    "fault": en_meter.FAULTS,
    "fault_short": en_meter.SHORT,
    "fault_one_of": en_together.ONE_OF,
    "meter": en_meter.SAID
    | en_meter.HEADLINES
    | en_meter_acts.MORE
    | en_baselines.SAID
    | en_together.SAID,
    "meter_rank": en_meter.RANKS,
    "meter_verdict": en_meter.VERDICTS,
    "meter_remedy": en_meter.VERDICT_REMEDIES,
    "meter_note": en_meter.NOTES,
    "meter_blind": en_meter.CANNOT_SEE,
    "meter_assumed": en_meter.ASSUMED | en_meter_run.ASSUMED,
    "meter_test": en_meter_acts.TESTS,
    "meter_outcome": en_meter_acts.OUTCOMES,
    "meter_would_sound": en_meter_acts.HEARD,
    "meter_plays": en_meter_acts.PLAYS,
    "meter_caution": en_meter_acts.CAUTIONS,
    "meter_title": en_meter_acts.TITLES | en_meter_run.TITLES,
    "meter_mark": en_meter_run.MARKS,
    "meter_place": en_meter_run.PLACES,
    "meter_heard": en_meter_run.HEARD,
    "meter_run": en_meter_run.STEPS,
    "meter_run_title": en_meter_run.STEP_TITLES,
    "meter_sheet": en_meter_run.SHEET,
    "complaint": en_meter_acts.COMPLAINTS,
    "complaint_test": en_meter_acts.COMPLAINT_TESTS,
    "complaint_other": en_meter_acts.COMPLAINT_OTHERS,
    "link": en_links.LINKS,
    "change": en_links.CHANGES,
    "change_field": en_links.CHANGE_FIELDS,
    "change_thing": en_links.CHANGE_THINGS,
    "change_value": en_links.CHANGE_VALUES,
}
OF_CATALOGUE = frozenset(ENGLISH["catalogue"].values())
POINT = re.compile(r"(?<=\d)\.(?=\d)")
# Every language stands here twice: as it was written, with decimal points, and with commas.
COMMA = ","
LANGUAGES = {
    "en": ENGLISH,
    f"en{COMMA}": {
        table: {code: POINT.sub(COMMA, words) for code, words in codes.items()}
        for table, codes in ENGLISH.items()
    },
}


def written(language: str, decimal: str) -> str:
    """The language as a person reads it: with their decimal sign in our own words, too."""
    return f"{language}{COMMA}" if decimal == COMMA and language in LANGUAGES else language


def decimals_of(text: str, *, language: str) -> str:
    """A text of ours that stands in no table, such as a formula, with the reader's decimal sign."""
    return POINT.sub(COMMA, text) if language.endswith(COMMA) else text


def kind_name(name: str, *, language: str) -> str:
    """The name of a kind in a list or sentence. The catalogue's own follow the decimal sign of the
    reader; one that a person gave stays as they wrote it."""
    own = name in OF_CATALOGUE
    return kept_together(decimals_of(name, language=language) if own else name)


def say(table: str, code: str, *, values: Mapping[str, str] | None = None, language: str) -> str:
    """The sentence for a code. KeyError when there is none: a test keeps the tables complete.

    A value may be a name somebody wrote, so each is made plain and keeps to itself.
    """
    template = kept_together(LANGUAGES.get(language, ENGLISH)[table][code])
    given = values or {}
    return template.format_map({name: isolated(given[name]) for name in places_in(template)})


@lru_cache(maxsize=2000)
def places_in(template: str) -> tuple[str, ...]:
    """The names a sentence has places for."""
    return tuple({name: None for _, name, _, _ in Formatter().parse(template) if name})


def has(table: str, code: str) -> bool:
    """Whether a table has words for a code."""
    return code in ENGLISH[table]


def say_count(table: str, code: str, *, count: int, language: str) -> str:
    """The sentence for a number of things: `code.one` or `code.many`."""
    number = "one" if count == 1 else "many"
    return say(table, f"{code}.{number}", values={"n": str(count)}, language=language)
