"""English: the steps of a working, and the names of what goes into them."""

STEPS = {
    "draw_tap": "What this tap draws on this line",
    "draw_direct": "What the low-impedance position takes from this line",
    "draw_existing": "What the existing part draws, by the ohms it measures",
    "draw_grossed_up": "With what its transformer loses",
    "existing_low": "At least, measured parts being what they are",
    "existing_high": "At most, measured parts being what they are",
    "zone_sum_value": "{zone}: added up",
    "zone_sum_low": "{zone}: at least",
    "zone_sum_high": "{zone}: at most",
    "control_share": "{control}: what the line feels of a load below it, as it stands",
    "control_off": "{zone}: {control} stands off, so the line feels nothing of it",
    "zone_felt": "{zone}: what the line feels of it through {control}",
    "total": "All together",
    "total_low": "All together, at least",
    "total_high": "All together, at most",
    "impedance": "Nominal impedance",
    "voltage_factor": "Times the marked watts",
    "with_all": "The first limit with as many more",
    "with_one_more": "And with one more than that: too much",
}

NAMES = {
    "tap_w": "tap",
    "line_v": "line",
    "tap_at_v": "marked at",
    "direct_ohm": "ohms across the line",
    "load_w": "load",
    "share": "share",
    "each_w": "each",
    "most_w": "most",
    "count": "how many",
    "factor": "factor",
    "rated_w": "rated",
    "rated_at_v": "rated at",
    "setting_db": "setting",
    "transformer_loss_db": "transformer loss",
    "hz": "frequency",
    "load_ohm": "load",
    "loop_ohm": "loop",
    "expected_ohm": "expected",
    "tolerance_fraction": "tolerance",
    "meter_fraction": "meter tolerance",
    "load_fraction": "load tolerance",
    "load_share": "share of the load",
    "arm_ohm": "bridge arm",
    "whole_arm_ohm": "whole bridge arm",
    "winding_fraction": "winding",
}

ORIGINS = {
    "typed": "entered in this job",
    "catalogue": "from the kind's data",
    "computed": "computed above",
    "assumed": "assumed",
}

SEEN = {
    "text": "the text was seen",
    "second hand": "reported by another text",
    "memory": "from memory",
    "practice": "",
    "arithmetic": "arithmetic",
}
