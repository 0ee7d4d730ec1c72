"""What a diagnosis says of alike faults together, and shares in words."""

from pycore.asks.meter_answers import BundleAnswer
from pycore.asks.meter_tell import Tell
from pycore.calc.diagnosis import Diagnosis
from pycore.calc.together import Bundle, bundled

MOST_GROUPS = 12
MOST_BUNDLES = 12
MOST_NAMED = 8
# Where one of these had to be assumed, ohms do not tell how far along a line a short lies.
STATED = {"lengths_stated", "cables_stated"}


def told_together(told: Diagnosis, tell: Tell) -> list[BundleAnswer]:
    """The groups of a diagnosis in bundles, likeliest first."""
    return [
        _bundle(told, one, first=not place, tell=tell)
        for place, one in enumerate(bundled(told)[:MOST_BUNDLES])
    ]


def _bundle(told: Diagnosis, bundle: Bundle, *, first: bool, tell: Tell) -> BundleAnswer:
    leads = [told.suspects[told.groups[one].suspects[0]] for one in bundle.groups]
    faults = [told.weighed.faults[one.variants[0]] for one in leads]
    words = tell.fault(faults[0])
    if len(faults) > 1:
        ids = [tell.wired.ids[one.node] for one in sorted(faults, key=lambda each: each.node)]
        texts = {"n": f"{len(ids)}", "names": _named(ids, tell)}
        unplaced = bundle.family == "short" and STATED & set(tell.wired.assumed)
        words = tell.say("fault_one_of", "short_unplaced" if unplaced else bundle.family, **texts)
    return {
        "share": bundle.share,
        "rank": rank_of(told, bundle.share, first=first, tell=tell),
        "words": words,
        "fault": bundle.family,
        "places": [tell.where(one.node) for one in faults],
        "groups": [one for one in bundle.groups if one < MOST_GROUPS],
    }


def _named(ids: list[str], tell: Tell) -> str:
    """The names of some things; of many the first, and how many more there are."""
    names = ", ".join(tell.name(one) for one in ids[:MOST_NAMED])
    more = len(ids) - MOST_NAMED
    return tell.say("meter", "names_more", names=names, n=f"{more}") if more > 0 else names


def has_baseline(told: Diagnosis) -> bool:
    """Whether any reading was judged against the line's own baseline."""
    return any(one.reference is not None for one in told.proof.evidence)


def rank_of(told: Diagnosis, share: float, *, first: bool, tell: Tell) -> str:
    """A share in words; as a number only once the line has a baseline."""
    if has_baseline(told):
        return tell.show(share, "fraction")
    if first:
        return tell.say("meter_rank", "found" if told.settled else "first")
    code = "likely" if share >= 0.2 else "possible" if share >= 0.02 else "unlikely"
    return tell.say("meter_rank", code)
