"""English: what to do with a meter: readings to take, and complaints."""

TESTS = {
    "rack_1k": "At the amplifier's end of {place}, line lifted: impedance meter, 1 kHz.",
    "rack_1k_all": "At the output of {place}, the amplifier itself taken off but fuses, relays and"
    " plugs in their places: impedance meter, 1 kHz, all home runs together.",
    "rack_dc_all": "At the output of {place}, the amplifier itself taken off but fuses, relays and"
    " plugs in their places: ohmmeter, direct current, all home runs together.",
    "rack_dc": "At the amplifier's end of {place}, line lifted: ohmmeter, direct current.",
    "out": "At {place}: lift the pair that comes from the amplifier. Impedance meter, 1 kHz, across"
    " what is fitted there and all beyond it.",
    "back": "At {place}, the home run lifted at the amplifier: lift what goes on from there, too."
    " Impedance meter, 1 kHz, looking back toward the amplifier.",
    "alone": "At {place}: lift both pairs. Impedance meter, 1 kHz, across what is fitted there"
    " alone.",
    "bare": "At {place}: lift both pairs and unplug what is fitted there. Is anything still across"
    " the terminals? Impedance meter, 1 kHz.",
    "segment": "Open the line in front of {ends}. At {place}: lift the pair that comes from the"
    " amplifier. Impedance meter, 1 kHz, across what is left beyond.",
    "plays_near": "Play at a low level, controls as they stand, and walk once through {place}:"
    " which loudspeakers are silent, weak, too loud or distorted?",
    "volts_near": "A 1 kHz test tone at a low level: volts at the amplifier's end of {place}, and"
    " then at {ends}.",
    "volts": "The same test tone, at the same level: volts at {place}, nothing lifted.",
    "earth_ohm_near": "At the amplifier's end of {place}, line lifted: ohmmeter, each leg to"
    " earth.",
    "earth_ohm": "At {place}: lift the pair that comes from the amplifier. Ohmmeter, each leg that"
    " goes on to earth.",
    "whole": "At {place}, nothing lifted there, the home run lifted at the amplifier: impedance"
    " meter, 1 kHz.",
}

OUTCOMES = {
    "range": "{low} to {high}",
    "open": "above {low}, or open",
    "below": "below {high}",
    "share_of_near": "{low} to {high} of the volts at the amplifier",
    "leg_bad": "below 100 kΩ",
    "leg_damp": "100 kΩ to 1 MΩ",
    "leg_good": "1 MΩ or more",
}

HEARD = {
    "all": "All of them: {own}",
    "one": "{place}: {own}; the rest: {others}",
    "from": "{place} and all beyond it: {own}; the rest: {others}",
}

PLAYS = {
    "well": "in order",
    "weak": "weak",
    "silent": "silent",
    "loud": "too loud",
    "harsh": "distorted",
    "hums": "hums",
}

CAUTIONS = {
    "play_low": "Play only what does no harm: level low, and off at once if the amplifier protects"
    " itself.",
    "live_line": "A line that plays carries volts that can hurt: insulated probes, and only those"
    " who are allowed to measure live.",
    "prove_dead": "Lock the amplifier off and prove the line dead at the box: timers, a page or a"
    " second amplifier can wake it.",
    "fire_panel": "Ask whether a fire panel uses or mutes this system: then only with leave of the"
    " responsible person, and a retest.",
    "controls_full": "Turn every control to 0 dB or bypass it.",
    "leads_null": "Null the leads and wait for silence: loudspeakers are microphones.",
    "earth_test": "Insulation only by the trained: both legs joined, against earth, electronics"
    " disconnected. Never leg to leg.",
}

TITLES = {
    "output": "{place}, all home runs together",
    "zone": "{place}, its home run lifted",
    "point": "{place}",
    "set": "controls as set",
    "open": "controls at 0 dB",
    "override": "controls bypassed",
    "z_1k_ohm": "impedance meter, 1 kHz",
    "dc_ohm": "ohmmeter, direct current",
    "volts": "volts on a test tone",
    "amps": "amperes on a test tone",
    "earth_ohm": "leg to earth",
    "foreign_v": "foreign volts",
    "plays": "by ear",
    "reading": "{place}: {quantity}, {controls}",
    "reading_alone": "{place}: {quantity}",
    "by_with": "{quantity}, {controls}",
    "over_range": "more than the meter can show",
    "band": "{low} to {high}",
    "working": "{value}; {range}",
    "working_out": "{place}, outward: {quantity}, {controls}",
    "working_alone": "{place}, what is fitted there alone: {quantity}, {controls}",
    "working_back": "{place}, back toward the amplifier: {quantity}, {controls}",
    "working_whole": "{place}, all together: {quantity}, {controls}",
    "open_line": "open",
    "amplifier": "the amplifier",
    "expected_open": "{place} should show an open line: nothing hangs on it.",
    "at_least": "{low} or more",
    "expected_load": "{place} should read {value}",
}

COMPLAINTS = {
    "protect_at_once": "The amplifier goes into protection at once",
    "protect_on_bass": "It protects only on loud bass",
    "protect_after_an_hour": "It protects after an hour",
    "silent_beyond": "Everything beyond a point is silent",
    "weak_beyond": "Everything beyond a point is weak",
    "zone_silent": "One zone is silent",
    "one_quiet": "One loudspeaker is dull or quiet",
    "one_loud_rest_weak": "One loudspeaker is very loud, the rest weak",
    "hum_with_rain": "Hum or buzz that comes and goes with rain",
    "oscillates": "Whistles or picks up radio, or the idle amplifier is hot",
    "crackles": "Crackles when the building moves",
    "page_not_heard": "A page is not heard in one room",
    "louder_after_swap": "Louder than it was since the amplifier was changed",
    "quieter_after_swap": "Half as loud since the amplifier was changed",
    "something_wrong": "Something is wrong",
}

COMPLAINT_TESTS = {
    "each_zone_off": "Lift all lines: is the amplifier by itself in order? Then the impedance of"
    " each zone at 1 kHz.",
    "low_frequency": "High-pass filter in. Impedance at 50 to 100 Hz against 1 kHz. Direct volts at"
    " the output.",
    "watts_by_impedance": "Impedance at 1 kHz: line volts squared over it are the watts asked for."
    " Compare with the output and with the pool.",
    "both_ends": "Impedance at 1 kHz from the amplifier's end and from the far end.",
    "volts_before_and_after": "Volts on a test tone at the last good and the first weak"
    " loudspeaker; loop ohms between them.",
    "with_override": "Impedance at 1 kHz with the override on.",
    "at_that_one": "Impedance at 1 kHz of that loudspeaker alone.",
    "below_ten_ohm": "Impedance at 1 kHz: below 10 Ω it is a low-impedance position or"
    " loudspeaker.",
    "legs_to_earth": "Each leg to earth, the whole line, then half by half.",
    "with_and_without_load": "Lift the line, add a load: does it stop?",
    "wiggle": "Move the splices while watching the impedance.",
    "override_pair": "Direct volts on the override pair; does the impedance change when the relay"
    " pulls?",
    "line_volts": "Line volts on a test tone, and what the panel prints.",
}

COMPLAINT_OTHERS = {
    "amplifier_itself": "the amplifier itself",
    "no_high_pass": "no high-pass filter",
    "core_saturates": "transformers that saturate",
    "row_above_line": "taps marked for fewer volts than the line has",
    "direct_current": "direct volts from a direct-drive amplifier",
    "ventilation": "poor ventilation",
    "thin_cable_spliced": "thinner cable spliced in",
    "relay": "a zone relay",
    "driver_damaged": "a damaged driver",
    "outdoor_box": "an outdoor box or horn",
    "long_open_cable": "a long cable without load",
    "coupling_to_microphone": "coupling into a microphone line",
    "splice": "a splice",
    "override_pair": "the 24 V override pair",
    "no_relay": "a control without override",
    "row_below_line": "the line has more volts than the taps are marked for: 100 V on 70.7 V taps"
    " is twice the watts, 3 dB louder",
    "row_above_line_quiet": "the line has fewer volts than the taps are marked for: 70.7 V on 100 V"
    " taps is half the watts, 3 dB quieter",
}

MORE = {
    "rank": "{share}",
    "about_zone": "Line",
    "about_output": "Output",
    "about_amplifier": "Amplifier",
    "about_point": "Loudspeaker {n}",
}

PROBLEMS = {
    "meter_not_landed": "{zone} is on no output, so what it should read is not known.",
    "meter_nothing": "No zone is on {output}.",
    "meter_no_line": "There is no line to measure: neither a job nor a count.",
    "reading_unread": "“{text}” is not a reading the tool can read.",
    "reading_is_leads": "That is no more than the test leads: the short is right here, or the leads"
    " touch.",
    "length_needed": "The length of the route is needed when both ends are read.",
    "meter_no_band": "{title}: there is nothing worked out that it could be compared with.",
}

REMEDIES = {
    "meter_not_landed": "Choose the output it hangs on.",
    "meter_nothing": "Put a zone on the output, or measure another.",
    "meter_no_line": "Open a job, or say how many loudspeakers there are.",
    "reading_unread": "Type digits, or OL for an open line.",
    "reading_is_leads": "Null the leads and measure again.",
    "length_needed": "Enter the length, one way.",
    "meter_no_band": "Measure ohms, with controls bypassed where an ohmmeter is used.",
}

STEP_TITLES = {
    "leads_off": "Without the test leads",
    "short_distance": "To the short, if it has no ohms of its own",
    "two_end_distance": "To the short, read from both ends",
    "two_end_own": "What the short itself has",
    "distance_error": "How far that may be off",
    "meter_loads": "Everything the meter sees, its watts added up",
    "meter_nominal": "By watts alone, without cable",
    "meter_windings": "By windings alone, as they usually are, without cable",
    "meter_sees": "With the cable in it: what the meter sees",
    "meter_follows": "How far the reading follows the loudspeakers; the rest follows the cable",
    "meter_unknown": "What taps nobody knows leave open",
    "meter_load": "Loudspeakers, with what unknown taps add",
    "meter_tolerance": "Meter, loudspeakers and cable together",
    "meter_low": "The least that still agrees",
    "meter_high": "The most that still agrees",
    "meter_low_again": "The least that still agrees with the baseline",
    "meter_high_again": "The most that still agrees with the baseline",
}

STEP_NAMES = {
    "read_ohm": "read",
    "leads_ohm": "test leads",
    "near_ohm": "from the near end",
    "far_ohm": "from the far end",
    "route_m": "length of the route",
    "meter_ohm": "what the meter leaves open",
    "cable_fraction": "cable tolerance",
    "distance_m": "distance",
    "light_ohm": "with every load as it is",
    "heavy_ohm": "with every load a little heavier",
    "more_fraction": "heavier by",
    "deviation_s": "spread by unknown taps",
    "seen_s": "seen by the meter",
    "unknown_fraction": "unknown taps",
    "follows_fraction": "share of the load",
    "lowest_fraction": "least winding",
    "usual_fraction": "usual winding",
    "highest_fraction": "most winding",
}
