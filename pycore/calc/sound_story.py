"""How much louder a change makes one loudspeaker, step by step: made when somebody opens it."""

from collections.abc import Iterator

from pycore.calc.draw_story import Told, told_draws
from pycore.calc.draws import Lookup
from pycore.calc.finding import Finding
from pycore.calc.solve import Lines
from pycore.calc.sound import Source, change_db, source_of
from pycore.formulas import arrival, power
from pycore.ground.working import Known, Origin, Step, Working, computed, step

SAME = Known(0.0, "db", "same")
LEFT_OUT = Known(0.0, "db", "assumed")


def change_finding(before: Lines, after: Lines, *, point: str) -> Finding | None:
    """The change of sound (dB) at a loudspeaker; None where the taps or kinds say too little."""
    louder_db = change_db(before, after, point=point)
    if louder_db is None:
        return None
    return Finding(
        code="sound_change",
        what="sound_change_db",
        where={"point": point},
        state=None,
        unit="db",
        verdict="note",
        value=louder_db,
    )


def change_working(before: Lines, after: Lines, *, point: str) -> Working:
    """The watts before and after, then what the kinds and the cable add or take."""
    was, now = source_of(before, point), source_of(after, point)
    if was is None or now is None:
        return Working((), ())
    codes = ["controls_bypassed"]
    steps = [
        *_draw_steps(before, was, code="sound_draws_now"),
        *_draw_steps(after, now, code="sound_would_draw"),
    ]
    watts = {
        "would_w": Known(now.draw_w or 0.0, "w", "computed"),
        "now_w": Known(was.draw_w or 0.0, "w", "computed"),
    }
    ratio = step("sound_ratio", power.ratio_of_watts, inputs=watts)
    level = step("sound_watts", power.level_of_power_ratio_db, inputs={"factor": computed(ratio)})
    steps += [ratio, level]
    sound, cable = SAME, LEFT_OUT
    if was.kind != now.kind:
        told = tuple(_kind_steps(was, now))
        steps += told
        sound = computed(told[-1])
    if was.loss_db is not None and now.loss_db is not None:
        made = _difference("sound_cable", was=was.loss_db, now=now.loss_db, origin="solved")
        steps.append(made)
        cable = computed(made)
    else:
        codes.append("by_taps_alone")
    all_of_it = {"power_db": computed(level), "sensitivity_db": sound, "cable_db": cable}
    steps.append(step("sound_change", arrival.change_of_sound_db, inputs=all_of_it))
    return Working(tuple(steps), tuple(codes))


def _draw_steps(lines: Lines, one: Source, *, code: str) -> list[Step]:
    """The steps of a draw, the last of them named for when it draws so."""
    told = Told(one.fitted, one.draw, one.line_v)
    steps = list(told_draws([told], Lookup.of(lines.job.kinds)))
    return [*steps[:-1], *(made._replace(code=code) for made in steps[-1:])]


def _kind_steps(was: Source, now: Source) -> Iterator[Step]:
    """What each kind makes of a drawn watt, and how far they are apart."""
    each = []
    for code, one in (("sound_of_now", was), ("sound_of_other", now)):
        inputs = {
            "kind_db": Known(one.sensitivity_db or 0.0, "db", "catalogue"),
            "transformer_loss_db": Known(one.transformer_loss_db, "db", _lost(one)),
        }
        made = step(code, arrival.sound_of_watt_db, inputs=inputs)
        each.append(made.result)
        yield made
    yield _difference("sound_kinds", was=each[0], now=each[1], origin="computed")


def _lost(one: Source) -> Origin:
    """Who said what a transformer loses: its kind, or nobody, and then it counts as nothing."""
    return "catalogue" if one.transformer_loss_db else "absent"


def _difference(code: str, *, was: float, now: float, origin: Origin) -> Step:
    inputs = {"would_db": Known(now, "db", origin), "now_db": Known(was, "db", origin)}
    return step(code, arrival.difference_db, inputs=inputs)
