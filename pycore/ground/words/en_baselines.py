"""English: what may be made a line's baseline, and why something may not."""

PROBLEMS = {
    "baseline_not_in_order": "Not made the baseline: later visits would be judged by it, and not"
    " everything read on that day is in order: {names}.",
    "baseline_not_whole": "Not made the baseline: {zone} still lacks {steps}.",
    "baseline_not_judged": "Not made the baseline: whether this is in order cannot be said:"
    " {names}.",
}

REMEDIES = {
    "baseline_not_in_order": "Find the cause and measure that again at the same place; or take a"
    " slip back. A zone that is in order can be made the baseline by itself.",
    "baseline_not_whole": "Measure those steps of the zone first.",
    "baseline_not_judged": "Leave it out, or measure it again with the controls bypassed.",
}

SAID = {
    "baseline_red": "No baseline yet. Not in order: {names}.",
    "baseline_one": "{title}: {value}",
    "baseline_heard": "{title}: heard {value}",
}

PAGE = {
    "baseline.after": "No baseline yet. First: {steps}.",
    "baseline.zone": "Make the readings of {zone} its baseline",
    "baseline.zone_off": "{zone} has its baseline from these readings: take that back",
}
