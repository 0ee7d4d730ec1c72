"""English: faults of a line, verdicts on readings, and what no reading can see."""

FAULTS = {
    "healthy": "Nothing wrong that these readings could show.",
    "dead": "{place} is dead: its transformer or a wire to it is open, or its selector stands"
    " between two taps.",
    "tap": "{place} stands on another tap: {tap_w} at {tap_at_v} would read so.",
    "direct": "The selector of {place} stands on low impedance, {direct_ohm} straight across the"
    " line.",
    "extra": "At {place} something more hangs on the line than is drawn: one more of {tap_w} would"
    " read so.",
    "extra_low": "At {place} a low-impedance loudspeaker of about {direct_ohm} hangs on the line.",
    "cut": "The line is broken between {before} and {place}: {place} and all beyond it are off.",
    "head_open": "{place} is open at the amplifier: its fuse, relay, plug or screw.",
    "short": "The pair is shorted between {before} and {place}.",
    "joint": "A bad joint between {before} and {place}: about {ohm} too much.",
    "control_off": "{place} is switched off.",
    "control_in": "{place} is turned down to about {set_db}.",
    "control_reversed": "The input and output of {place} are exchanged.",
    "override_fails": "{place} is not bypassed: its override does not pull in.",
    "cable_thicker": "{place} is wired with thicker cable than is thought.",
    "cable_thinner": "{place} is wired with cable about two gauges thinner than is thought.",
    "cable_much_thinner": "{place} is wired with much thinner cable than is thought.",
    "cable_clad": "{place} is wired with copper-clad aluminium.",
    "series": "From {place} on the loudspeakers are wired one behind the other, not side by side.",
    "series_line": "The loudspeakers of {place} are wired one behind the other, not side by side.",
    "wrong_zone": "The pair that is landed as {place} is that of {other}.",
    "wet": "Damp across the pair at {place}: about {ohm}.",
    "earthed": "A leg of the line touches earth at {place}.",
    "earthed_line": "A leg of the line touches earth at the amplifier's end of {place}.",
    "two": "Two faults. {first} {second}",
}

SHORT = {
    "healthy": "nothing wrong",
    "dead": "dead",
    "tap": "another tap",
    "direct": "low-impedance position",
    "extra": "one more than drawn",
    "extra_low": "low-impedance loudspeaker added",
    "cut": "break",
    "head_open": "open at the amplifier",
    "short": "short",
    "joint": "bad joint",
    "control_off": "control off",
    "control_in": "control left in",
    "control_reversed": "control reversed",
    "override_fails": "override does not pull in",
    "cable": "other cable",
    "series": "wired in series",
    "wrong_zone": "another zone",
    "wet": "damp",
    "earthed": "leg to earth",
    "two": "two faults",
}

HEADLINES = {
    "settled": "Found",
    "settled_rough": "Found, by a rough count",
    "settled_rough_why": "{words} This rests on the count as it was typed: look at the place before"
    " you open more, or draw the line as a job and read it again, which makes it sure.",
    "settled_healthy": "As expected",
    "sound_or_missing": "As expected, or one of {n} is missing",
    "likeliest": "Most likely",
    "open": "Not told apart yet",
    "contradiction": "Two readings exclude each other",
    "do_not_connect": "Do not connect",
    "no_evidence": "Nothing to go by yet",
    "read_before": "The line has changed: read it again",
    "nothing_read": "Nothing measured yet",
    "live": "Stop: the line is not dead",
    "live_act": "Read: {shown}. {remedy}",
}

RANKS = {
    "found": "found",
    "first": "likeliest",
    "likely": "likely",
    "possible": "possible",
    "unlikely": "unlikely",
}

VERDICTS = {
    "as_expected": "As expected: {value}, and it should read {low} to {high}.",
    "agrees_as_set": "{value} agrees with the controls as they stand. While one is turned down it"
    " judges no line.",
    "windings_only": "{value} is what the windings of transformers read. It says nothing about"
    " taps.",
    "look_closer": "{value} is a little off: it should read {low} to {high}.",
    "not_as_expected": "{value} is not what it should read: {low} to {high}.",
    "reads_short": "A short, or test leads only: it should read {low} to {high}.",
    "reads_open_line": "An open line: it should read {low} to {high}.",
    "open_as_expected": "Open, as expected: nothing hangs there.",
    "not_open": "{value}, where nothing should hang.",
    "not_expected": "{value} is noted; what it should read is not known.",
    "do_not_connect": "Do not connect. {value} is below the {limit} this output can bear.",
    "do_not_connect_short": "Do not connect. The line reads as a short.",
    "at_the_limit": "At the limit: {value} may be below the {limit} this output can bear.",
    "earth_good": "{value} from leg to earth: floating, as it should be.",
    "earth_damp": "{value} from leg to earth: damp, or dirt in a box.",
    "earth_bad": "{value} from leg to earth: a leg touches earth.",
    "foreign_none": "{value} counts as none: a meter may show up to {none_v} on a dead line.",
    "foreign_live": "Stop: {value} on a line that should be dead, where {none_v} is the most.",
    "heard": "Heard and counted.",
    "set_aside": "Set aside: read {then} then, {now} now. The line has changed between, or one of"
    " them was misread.",
    "line_changed": "The line has changed since {value} was read: it was to read {then} then"
    " ({mark}), now {due}. So it says nothing of the line as it is.",
    "noted": "{value} is noted.",
    "tolerance_all": "With a tolerance of 100 % or more nothing can be inferred from it.",
    "reads_nothing": "That is no reading.",
    "reads_negative": "{value} is no reading: the leads were nulled too far, or the meter is off.",
}

VERDICT_REMEDIES = {
    "look_closer": "Null the leads, wait for silence, measure again.",
    "not_as_expected": "Leave it off, and take the next reading.",
    "reads_short": "Null the leads and measure again. Leave it off.",
    "reads_open_line": "Look at fuse, relay, plug and controls first.",
    "not_open": "Look for what hangs there.",
    "do_not_connect": "Leave the amplifier off. Connected so, it trips or burns.",
    "do_not_connect_short": "Leave the amplifier off until the short is found.",
    "at_the_limit": "Null the leads, lift the other zones, measure again; leave it off.",
    "agrees_as_set": "Turn every control to 0 dB or bypass it, then measure again.",
    "earth_damp": "Open the line half by half, the wettest boxes first, and wait each time until"
    " the value stands still.",
    "earth_bad": "Open the line half by half until the half that touches earth is found.",
    "foreign_live": "Touch nothing on it. Find where it comes from, switch that off and lock it,"
    " then measure again. If a two-pole tester of low resistance finds none, it is only coupled in"
    " from cables beside it: enter what that tester shows.",
    "tolerance_all": "Enter the tolerance of the meter, for example 5 %.",
    "reads_nothing": "Measure again.",
    "set_aside": "Remove it, or measure there once more: what is read last counts.",
    "line_changed": "Read it again.",
    "reads_negative": "Short the leads, null them, measure again.",
}

NOTES = {
    "tolerance_least": "No reading is better than 0.5 %; that is taken.",
    "reads_open": "The meter shows an open line.",
    "reads_zero": "Zero: a short, or the leads touch.",
    "reads_negative": "Below zero: the leads were nulled too far. It is taken as a short.",
    "reads_leads": "No more than the test leads: a short near by, or the leads touch.",
    "reads_no_volts": "No volts arrive.",
    "reads_nothing": "That is no number.",
    "tolerance_all": "With such a tolerance nothing can be inferred.",
    "other_output": "It was taken on another output, and is not weighed here.",
    "other_zone": "It was taken on another zone: it only shows whether all zones read high or low"
    " alike.",
    "controls_stay": "A control that cannot be bypassed hides the line from an ohmmeter: it reads"
    " that control's winding. Read it at 1 kHz, or with an ohmmeter from behind that control on.",
    "controls_hide": "Controls hide the line from an ohmmeter: it reads their own windings. Bypass"
    " them, and measure again.",
    "no_near_volts": "Volts far out need volts at the amplifier on the same tone, the same day.",
    "amps_alone": "Amperes need volts at the same place on the same tone, the same day.",
    "ohms_of_amperes": "Volts and amperes together: taken as ohms.",
    "foreign_practice": "Up to which figure a line counts as dead is common practice, no source.",
    "line_changed": "The line has changed since: it was to read {then} then, now {due}. No change"
    " of taps mends what was read; read it again.",
    "against_baseline": "Judged against this line's own baseline.",
}

CANNOT_SEE = {
    "wrong_row": "Every loudspeaker on the wrong voltage row: the impedance is the same on any"
    " output. Compare the volts printed on the selectors.",
    "polarity": "Polarity: a reversed loudspeaker reads the same. It takes ears or a polarity"
    " pulse.",
    "earthed_leg": "An earthed leg: measure each leg to earth.",
    "controls_as_set": "Anything behind a control that is turned down: its load hardly shows.",
    "light_line": "Which cable it is: so light a load hardly feels it.",
    "damaged_driver": "A damaged driver behind a healthy transformer: listen.",
}

ASSUMED = {
    "lengths_stated": "Lengths that are not known are taken as 3 to 30 m each (common practice).",
    "cables_stated": "Cable that is not known is taken as the zone's most used, else 1.5 mm².",
    "taps_of_kind": "A tap that is not known may be any of its kind: the band is wide enough for"
    " all.",
    "taps_usual": "A loudspeaker nobody knows may stand on any usual tap: the band is wide enough"
    " for all.",
    "existing_stated": "A part that was never measured may draw 5 to 200 W (common practice).",
    "range_of_loss": "What transformers lose is taken as a range where it is not known.",
    "windings": "An ohmmeter finds 2 to 10 % of a loudspeaker's impedance (common practice).",
    "load_tolerance": "Loudspeakers may be {load_pct} off their nominal ohms, each by itself and"
    " all of them together.",
    "priors": "What is met how often is common practice, no source: the odds are a ranking, not a"
    " probability.",
    "count_about": "The count is a guess: it may be {count_pct} off.",
    "sections_solved": "Cable is worked out exactly, section by section; what the meter sees is the"
    " outcome of all of them together.",
    "controls_open": "Every control stands at 0 dB.",
    "controls_override": "Every control is bypassed.",
    "controls_set": "Every control stands as it is written in the job.",
    "home_run_lifted": "Looking back, the home run is taken as lifted at the amplifier.",
}

SAID = {
    "alike": "The other zones all read {percent} against what they should; that is taken off this"
    " one before it is judged.",
    "contradiction_same": "{one} and {other} were taken at the same place in the same way and"
    " differ too much. Measure there again.",
    "changed": "“{title}”: read {then} then, {now} now. The line has changed between, or one of"
    " them was misread. What was read last is judged; the earlier one is set aside.",
    "contradiction": "{one} and {other} cannot both be true of this line. Measure both again.",
    "missing_unseen": "One missing of {n} loudspeakers cannot be told apart from a sound line by"
    " this: it would read {ohm}. Nothing else wrong that it could show.",
    "ranking": "A ranking, not a probability: this line has no baseline yet.",
    "with_baseline": "Judged against this line's own baseline.",
    "two_needed": "No single fault explains these readings.",
    "distance_one": "About {metres} from the amplifier ({low} to {high}), {since_m} beyond"
    " {since}; nearer if the short has ohms of its own.",
    "distance_one_start": "About {metres} from the amplifier ({low} to {high}); nearer if the short"
    " has ohms of its own.",
    "distance_two_start": "About {metres} from the amplifier ({low} to {high}); the short itself"
    " has {own_ohm}. Read from both ends.",
    "distance_two": "About {metres} from the amplifier ({low} to {high}), {since_m} beyond"
    " {since}; the short itself has {own_ohm}. Read from both ends.",
    "distance_section": "Between {low} and {high} from the amplifier.",
    "no_next_settled": "This is left. {words} Go and look there.",
    "no_next": "No further reading would tell these apart. Look at the places in this order.",
    "pair_of": "“{title}”, {value},",
    "next_live": "Nothing more is measured on this line before the foreign volts are gone.",
    "next_healthy": "Nothing more to measure unless somebody complains.",
}
