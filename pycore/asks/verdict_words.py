"""The word of a verdict: a load fits, a cable keeps a limit, a mark is in order."""

from pycore.calc.finding import Verdict
from pycore.ground.units import Manner
from pycore.ground.words import say

LOADS = ("output_load_w", "pool_load_w", "attenuator_load_w", "output_impedance_ohm")
LOSSES = ("zone_loss_db",)
METERED = ("meter_reading",)
LIVE = ("foreign_v",)


def verdict_words(what: str, verdict: Verdict, *, manner: Manner) -> str:
    """What a verdict on such a thing is called."""
    families = {"load": LOADS, "loss": LOSSES, "meter": METERED, "live": LIVE}
    family = next((one for one, whats in families.items() if what in whats), "mark")
    return say("verdict", f"{family}_{verdict}", language=manner.language)
