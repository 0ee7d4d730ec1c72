"""English: a first test in single steps, readings of any visit, and the sheet of what to expect."""

HEARD = {
    "well": "plays well",
    "weak": "weak",
    "silent": "silent",
    "loud": "too loud",
    "distorted": "distorted",
}

# What a reading is called beside its shape, in a word or two.
MARKS = {
    "ok": "as expected",
    "near_high": "a little too high",
    "near_low": "a little too low",
    "near": "a little off",
    "over_high": "too high",
    "over_low": "too low",
    "over": "not in order",
    "unknown": "not judged",
    "note": "noted",
    "set_aside": "set aside",
    "line_changed": "of the line before",
}

TITLES = {
    "how_out": "outward, {controls}",
    "how_back": "back toward the amplifier, {controls}",
    "how_out_lifted": "outward, {controls}, lifted: {names}",
    "how_back_lifted": "back toward the amplifier, {controls}, lifted: {names}",
}

STEP_TITLES = {
    "isolated": "Lock it off",
    "foreign": "No foreign volts",
    "controls": "Controls up",
    "earth": "Leg to earth",
    "direct": "Ohmmeter, direct current",
    "impedance_open": "Impedance meter, 1 kHz",
    "impedance_override": "1 kHz, controls bypassed",
}

STEPS = {
    "isolated": "Amplifier off and locked off. Lift both legs of {place} at the amplifier.",
    "foreign": "At the lifted end of {place}: volts, alternating and direct, leg to leg and each"
    " leg to earth. Enter the highest of the six; there must be none.",
    "controls": "Turn every control of {place} to 0 dB. Look for those nobody drew.",
    "earth": "With an ohmmeter, from each leg of {place} to earth, one after the other. Enter the"
    " lower.",
    "direct": "With an ohmmeter (direct current), leg to leg. It finds a short or an open line and"
    " says nothing about taps.",
    "direct_override": "Bypass every control, as a page does. Then with an ohmmeter (direct"
    " current), leg to leg. It finds a short or an open line and says nothing about taps.",
    "direct_some": "Bypass every control that can be, as a page does; {controls} cannot: leave full"
    " up. Then with an ohmmeter (direct current), leg to leg. It finds a short or an open line as"
    " far as that control: its own winding hides what lies behind.",
    "direct_full": "Cannot be bypassed: {controls}. Leave full up. With an ohmmeter (direct"
    " current), leg to leg. It finds a short or an open line as far as the control: its own winding"
    " hides what lies behind.",
    "direct_hidden": "neither a short nor open",
    "impedance_open": "With an impedance meter at 1 kHz, leg to leg. An ohmmeter will not do: it"
    " reads windings only.",
    "impedance_controls": "Override off again, controls at 0 dB. With an impedance meter at 1 kHz,"
    " leg to leg. An ohmmeter will not do: it reads windings only.",
    "impedance_some": "Override off again, every control at 0 dB. With an impedance meter at 1 kHz,"
    " leg to leg: it sees through a control that is full up. An ohmmeter will not do: it reads"
    " windings only.",
    "impedance_full": "Controls still full up. With an impedance meter at 1 kHz, leg to leg: it"
    " sees through a control that is full up. An ohmmeter will not do: it reads windings only.",
    "impedance_override_some": "Put every control of {place} that can be on override as a page"
    " does, or bridge it: its control voltage on, or off where it bypasses without; {controls}"
    " cannot: leave full up. Then with the impedance meter at 1 kHz again.",
    "impedance_override": "Put every control of {place} on override as a page does, or bridge it:"
    " its control voltage on, or off where it bypasses without. Then with the impedance meter at"
    " 1 kHz again.",
    "earth_expects": "at least 1 MΩ",
    "foreign_expects": "none: at most {none_v}",
    "stop": "Stop: the line is not dead. Nothing more is done on it before its volts are gone.",
    "connect": "Only when every zone is as expected: connect with the level at minimum and the"
    " high-pass filter on.",
}

SHEET = {
    "title": "Test sheet: {job}",
    "running": "{title}, {day}",
    "schedule_title": "Tap schedule: {job}",
    "schedule_zone": "{zone}, on {output}",
    "schedule_no_output": "no output",
    "schedule_terminals": "the terminals",
    "schedule_box": "What hangs there",
    "schedule_behind": "Behind",
    "schedule_stands": "Stands on",
    "schedule_kind": "Kind",
    "schedule_section": "Cable to it",
    "schedule_loss": "Lost up to it",
    "schedule_known": "How its tap is known",
    "schedule_drawing": "from the drawing",
    "schedule_found": "found so",
    "schedule_set": "set on site",
    "schedule_checked": "set and checked",
    "schedule_ticked": "ticked {at} {initials}",
    "schedule_sign": "Looked at by",
    "schedule_sign_says": "A name here says who looked at the taps and when, and nothing more.",
    "schedule_says": "This is what was entered, not what was measured. A tap from the drawing is a"
    " plan: look at the selector. An empty line is not known.",
    "ends": "{zone}: at the amplifier, home run lifted",
    "boxes_z_1k_ohm_open": "{zone}: at each box, impedance meter, 1 kHz, controls at 0 dB",
    "boxes_z_1k_ohm_override": "{zone}: at each box, impedance meter, 1 kHz, controls bypassed",
    "boxes_z_1k_ohm_set": "{zone}: at each box, impedance meter, 1 kHz, controls as set",
    "boxes_dc_ohm_open": "{zone}: at each box, ohmmeter, direct current",
    "boxes_dc_ohm_override": "{zone}: at each box, ohmmeter, direct current, controls bypassed",
    "head": "The job",
    "head_job": "Job",
    "head_place": "Place",
    "head_entry": "Entry",
    "head_day": "Day of this sheet",
    "head_when": "When",
    "head_instrument": "By what",
    "head_read_how": "Read, and which way",
    "output": "{output}: {volts}, at most {watts}",
    "output_volts": "{output}: {volts}, its watts not known",
    "kept_by": "{at}, {instrument}",
    "kept_on": "{at}",
    "kept_how": "{how}; {by}",
    "kept_before": "{newer}; before that {value}, {by}",
    "kept_before_judged": "{newer}; before that {value} ({mark}), {by}",
    "kept_judged": "{mark}: should read {range}",
    "mark_of": "{what}: judged",
    "due_low_of": "{what}: should read, from",
    "due_high_of": "{what}: should read, to",
    "head_judged": "Judged",
    "kept_what": "{quantity}, {how}",
    "others": "Readings kept besides these",
    "noted_of": "{what}: when, by what",
    "sign": "Measured by",
    "sign_name": "Name",
    "sign_date": "Date",
    "sign_signature": "Signature",
    "sign_says": "A name here says who measured and when, and nothing more.",
    "head_what": "What",
    "head_box": "Box",
    "head_far": "From the amplifier",
    "head_expected": "Should read",
    "head_read": "Read",
    "head_out": "Outward, feed lifted",
    "head_alone": "That one alone",
    "head_back": "Back, without what lies beyond",
    "head_whole": "Back, with all that lies beyond",
    "low_of": "{what}, from",
    "high_of": "{what}, to",
    "row": "{quantity}, {controls}",
    "row_far": "at the far end, {place}: {quantity}, {controls}",
    "do_not_connect": "Do not connect {zone}: {value} is below the {limit} its output can bear.",
    "not_known": "{zone} is left out: {why}",
    "states_alike": "No control hangs on {zone}: bypassed it reads the same.",
    "stays_in": "Cannot be bypassed: {controls}. Left full up, it hides from an ohmmeter what lies"
    " behind; an impedance meter sees through it.",
    "direct_says": "An ohmmeter (direct current) reads windings only. It finds shorts and open"
    " lines and says nothing about taps; those take an impedance meter.",
    "not_for": "It certifies nothing, and it is not for evacuation, alarm or any life-safety"
    " system.",
    "not_seen": "Not seen by any reading here: a wrong voltage row, polarity, an earthed leg.",
    "open_from": "open",
    "first": "{zone}: before anything else, line lifted and locked off",
    "row_foreign": "Foreign volts, alternating and direct: the highest of leg to leg and each leg"
    " to earth",
    "row_earth": "Each leg to earth by ohmmeter: the lower",
}

PLACES = {
    "bare": "{metres} from this end ({low} to {high}).",
    "short": "Between {before} and {place}, {since_m} beyond {before}: {metres} from the amplifier"
    " ({low} to {high}), nearer if the short has ohms of its own.",
    "short_start": "Between the amplifier and {place}: {metres} from the amplifier ({low} to"
    " {high}), nearer if the short has ohms of its own.",
    "short_own_start": "Between the amplifier and {place}: {metres} from the amplifier ({low} to"
    " {high}).",
    "short_own": "Between {before} and {place}, {since_m} beyond {before}: {metres} from the"
    " amplifier ({low} to {high}).",
    "break": "Between {before} and {place}: {low} to {high} from the amplifier.",
}

ASSUMED = {
    "line_changed": "When it was read the line was to read {then}, {range}: the reading is judged"
    " by that. This is how the line as it is comes to its number.",
    "fit_counts": "How well it fits counts every tolerance: of the meter, of the loudspeakers each"
    " and all alike, and of the cable; and what ears say.",
    "copper_typed": "Copper counts at {copper_c}, as typed.",
    "copper_of_job": "Copper counts at {copper_c}, as the job's limits say. Ten degrees more or"
    " less move the place by 4 %.",
    "copper_start": "Copper counts at {copper_c}, as in a new job. Ten degrees more or less move"
    " the place by 4 %.",
    "nothing_on_pair": "Nothing hangs on the pair: one loudspeaker outweighs any length of cable.",
}

PROBLEMS = {
    "share_gone": "These suspects are no longer the same.",
    "no_short_reads_so": "No short on this line would read so.",
    "no_break_reads_so": "No break on this line would read so.",
    "distance_too_far": "That would be {length} of cable: no line is so long, so it was not this"
    " that was read.",
    "distance_too_short": "That would be {length} of cable: the meter saw no pair at all.",
    "ends_disagree": "No short on so long a route of this cable reads so from both ends.",
    "no_such_pair": "Both ends together would have {capacitance}: no pair has, so it was not this"
    " that was read.",
    "line_without_length": "No section of this line has a length: ohms do not become metres.",
    "break_at_1k": "A break is told by impedance at 1 kHz, not by direct current.",
    "far_box_needed": "It is not known at which box the second reading was taken.",
    "cable_needed": "Without a cable ohms do not become metres.",
}

REMEDIES = {
    "share_gone": "Look at the list again.",
    "no_short_reads_so": "Look whether it is a short at all: null the leads, and read it again.",
    "no_break_reads_so": "Read it again with every control bypassed, or look at the meter's"
    " suspects.",
    "distance_too_far": "Ohms are asked for: of a short those of the loop, of a break those of the"
    " open pair at 1 kHz, usually some kilohms. Read them again.",
    "distance_too_short": "Look whether the leads touch both conductors, and read it again. It may"
    " be open right at the terminals.",
    "ends_disagree": "Check the length and the cable, null the leads, and read both ends again.",
    "no_such_pair": "Read the ohms of the open pair at 1 kHz again, and check the length.",
    "line_without_length": "Enter the lengths in the list, or look at it as a bare pair.",
    "break_at_1k": "Measure at 1 kHz.",
    "far_box_needed": "Choose the box.",
    "cable_needed": "Choose the cable.",
}

DISTANCE_STEPS = {
    "cause_prior": "How often it is met, before anything was read: {fault}",
    "group_met": "How often one of this group is met, before anything was read",
    "pair_prior": "How often both are met at once",
    "group_prior": "With what cannot be told apart from it",
    "cause_fit": "How much better the readings fit it than all that is weighed, on average",
    "reading_off": "{title}: how far it is from what this would read",
    "cause_share": "Its share of all that is weighed",
    "on_line": "On this line, its own loudspeakers and sections counted",
    "error_with_windings": "How far it may be off, the windings' range counted",
    "loop_at_tone": "With its inductance, for the tone",
    "open_distance": "To the break, by the capacitance of what is left",
    "open_error": "How far that may be off",
    "two_end_break": "To the break, read from both ends",
}

DISTANCE_NAMES = {
    "cause_factor": "weight of this",
    "all_factor": "weight of all",
    "prior_fraction": "how often it is met",
    "fit_factor": "how much better the readings fit it than the average",
    "first_fraction": "how often this is met",
    "second_fraction": "how often the second is met",
    "again_fraction": "a second fault where there is a first",
    "others_fraction": "the others of its group",
    "own_fit_factor": "how well the readings fit it, the best of all being 1",
    "average_fit_factor": "how well they fit all that is weighed, each by its weight",
    "cable_m": "by the cable alone",
    "others_m": "what the others on the line hide",
    "error_m": "by meter and cable",
    "windings_m": "by the range of windings",
    "meter_fraction": "meter tolerance",
}
