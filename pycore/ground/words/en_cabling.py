"""English: hanging runs, choosing a cable, what if, and what can go wrong with them."""

PROBLEMS = {
    "run_unread": "“{text}” is neither a whole number of loudspeakers nor a number and a distance.",
    "run_needed": "Say how many, and how far apart.",
    "lengths_needed": "No length is typed.",
    "ids_short": "The page set too few numbers aside for {count} loudspeakers.",
    "longer_than_section": "That is longer than the section it is cut into, which is {length_m}.",
    "no_one_section": "There is no one section to cut into: nothing or several hang there.",
    "not_behind_that": "What it is to be put ahead of does not hang there any more.",
    "tick_loudspeakers": "Only a loudspeaker is ticked.",
    "tick_needs_tap": "Its tap is not known, so there is nothing to tick.",
}

REMEDIES = {
    "run_unread": "Type it as 20, as 20 × 4 m, or as 12 m for a single one.",
    "run_needed": "Type it as 20 × 4 m.",
    "lengths_needed": "Type the home run, the rest, or both.",
    "ids_short": "Do it again. If that does not help, load the page again.",
    "longer_than_section": "Type a shorter length, or change that section first.",
    "no_one_section": "Hang it with cable of its own.",
    "not_behind_that": "Look at the line again, and pick the place once more.",
    "tick_needs_tap": "Enter the tap it stands on first.",
}

TITLES = {
    "point_volts_v": "{place}: volts",
    "point_watts_w": "{place}: watts",
    "point_loss_db": "{place}: cable loss",
    "point_level_db": "{place}: level",
}

STEPS = {
    "point_path": "All sections on the way to {point}",
    "point_off": "A control on the way stands off: nothing passes it",
    "point_controls": "What the controls on the way take",
    "point_both": "Cable and controls together",
    "point_volts": "The volts that are left there",
    "point_load": "What hangs there, as the line feels it",
    "point_watts": "The watts it takes at those volts",
    "point_level": "The level there against the terminals",
}

NAMES = {
    "power_db": "by watts",
    "sensitivity_db": "by sensitivity",
    "cable_db": "by cable",
    "tap_db": "by its tap",
    "control_db": "by controls",
}

FINDINGS = {
    "point_number": "{value}",
    "point_number_unknown": "Not known: a length, a cable or a tap on the way is missing.",
}

EFFECTS = {
    "this": "this one",
    "zone": "zone",
    "output": "output",
    "pool": "shared",
    "control": "control",
    "far": "far end",
    "more": "+{value}",
}

DRAWING = {
    "volts_v": "Volts",
    "watts_w": "Watts",
    "loss_db": "Cable loss",
    "level_db": "Level of the line there",
    "length_of": "{length} · {cable}",
    "length_no_cable": "{length} · cable not known",
    "home_run": "Home run {length}, {cable}",
    "home_run_no_cable": "Home run {length}, cable not known",
    "home_run_unknown": "Home run, length not known",
    "tone_to": "to {most}",
    "tone_beyond": "beyond {most}",
    "tone_unknown": "not known",
    "limit": "{limit} is {volts} of the volts or {watts} of the watts; then the cable's ohms, out"
    " and back, are {ohms} of the load's.",
}

CHOICES = {
    "now": "With the cable that is there the worst loudspeaker loses {loss_db}; {limit_db} are"
    " allowed.",
    "title_all": "The whole line",
    "title_home_run": "The home run only",
    "home_run_unknown": "The other sections have no cable yet, so the home run cannot be chosen"
    " alone.",
}

WHAT_IF = {
    "voltage": "{output} driven at {line_v}",
    "tap": "Every loudspeaker of {zone} on {tap_w}",
    "left": "Without a {tap_w} tap for this line, so left as they are: {list}.",
    "left_more": "{n} more",
    "cable_all": "{cable} through all of {zone}",
    "cable_home_run": "{cable} in the home run of {zone}",
    "more": "{n} more at the end of {zone}",
    "caution": "Every tap, every control and the wiring class must be redone for another line"
    " voltage. Nothing may be switched on before that.",
    "same": "Nothing that is judged would change.",
    "there": "The job is like that already.",
}
