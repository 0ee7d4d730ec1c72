"""English: the line as it hangs. Losses, what a meter reads, cables and their choice."""

TITLES = {
    "zone_loss_db": "{place}: cable loss",
    "zone_loss_10k_db": "{place}: treble",
    "zone_loss_nominal_db": "{place}: against the nominal voltage",
    "zone_loss_nearest_db": "{place}: far against near",
    "zone_spread_db": "{place}: spread",
    "zone_quietest_db": "{place}: the quietest",
    "zone_wasteful_section": "{place}: section that loses most",
    "zone_impedance_ohm": "{place}: should read",
    "output_line_impedance_ohm": "{place}: should read",
}

FINDINGS = {
    "zone_loss_ok": "{point} loses {value} in the cable; {limit} is allowed.",
    "zone_loss_near": "No reserve: {point} loses {value} in the cable and {limit} is allowed."
    " The far end is that much quieter; nothing is harmed.",
    "zone_loss_over": "{point} loses {value} in the cable and {limit} is allowed. The far end is"
    " that much quieter; nothing is harmed.",
    "zone_loss_ok_bounded": "{place} loses {high} in the cable at most, at {point}; {limit} is"
    " allowed.",
    "zone_loss_near_bounded": "No reserve: {point} loses {high} in the cable at most, and {limit}"
    " is allowed. Nothing is harmed.",
    "zone_loss_over_bounded": "{point} loses {low} in the cable at least, and {limit} is allowed."
    " The far end is that much quieter; nothing is harmed.",
    "zone_loss_unknown_section": "What the cable of {place} loses is not known: the length or"
    " the cable of {unknown_sections} of its sections is not entered.",
    "zone_loss_unknown_load": "What the cable of {place} loses is not known: it depends on the"
    " taps, and not all are known (missing: {unknown_taps}).",
    "zone_loss_not_entered": "What the cable of {place} loses is not known: no length or cable is"
    " entered.",
    "zone_loss_inside": "What the cable of {place} loses is not known: nobody has drawn the"
    " existing part.",
    "zone_loss_too_long": "A run of {place} is longer than any loudspeaker line: {far_m}.",
    "zone_loss_10k_same": "At 10 kHz {point} loses {value}, about as much as at 1 kHz"
    " ({loss_1k_db}).",
    "zone_loss_10k_more_heavy": "At 10 kHz {point} loses {value}, {change_db} more than at 1 kHz."
    " The load ({load_ohm}) is heavier than the pair's own impedance ({own_ohm}), so the treble"
    " meets its inductance.",
    "zone_loss_10k_more": "At 10 kHz {point} loses {value}, {change_db} more than at 1 kHz: the"
    " current runs in the skin of the copper.",
    "zone_loss_10k_less": "At 10 kHz {point} loses {value}, {change_db} less than at 1 kHz: the"
    " load ({load_ohm}) is lighter than the pair's own impedance ({own_ohm}).",
    "zone_loss_10k_unknown": "What the cable of {place} does to the treble is not known: a length,"
    " a cable or a tap is missing.",
    "zone_loss_nominal": "{point} stands at {at_v}, {value} below the nominal {line_v}.",
    "zone_loss_nearest": "{point} is {value} quieter by the cable than {near}, the one nearest to"
    " the amplifier.",
    "zone_spread": "{point} and {near} differ most by the cable: {value}.",
    "zone_quietest_by_tap": "{point} is the quietest as it is set, most by its tap, which draws"
    " {own_w} where its neighbours draw {usual_w}: {tap_db} by its tap, {control_db} by controls,"
    " {cable_db} by cable.",
    "zone_quietest_by_control": "{point} is the quietest as it is set, most by the control in front"
    " of it: {control_db} by controls, {tap_db} by its tap, {cable_db} by cable.",
    "zone_quietest_by_cable": "{point} is the quietest as it is set, most by its cable: {cable_db}"
    " by cable, {tap_db} by its tap, {control_db} by controls.",
    "zone_wasteful": "The section to {section} wastes most: {value} of the {copper_w} that stay in"
    " the copper.",
    "zone_impedance_reads": "Disconnected from the amplifier, {place} should read {value} at"
    " 1 kHz, its cable included.",
    "zone_impedance_unknown": "What {place} should read at 1 kHz is not known: a length, a cable,"
    " a tap or the make of a control is missing.",
    "zone_impedance_between": "{place} should read {value} at 1 kHz. A length, a cable, a tap or"
    " the make of a control is missing, so nobody knows it closer.",
    "zone_impedance_open": "{place} has nothing connected: a meter sees only its cable.",
    "zone_impedance_hidden": "As its controls stand, a meter sees nothing of {place}.",
    "output_line_reads": "With all its lines landed and the amplifier disconnected, {place} should"
    " read {value} at 1 kHz.",
    "output_line_unknown": "What the lines of {place} should read together at 1 kHz is not known.",
    "output_line_between": "With all its lines landed and the amplifier disconnected, {place}"
    " should read {value} at 1 kHz. Something of its lines is missing, so nobody knows it closer.",
    "output_line_open": "{place} has nothing connected: a meter sees only cable.",
    "output_line_hidden": "As the controls stand, a meter sees nothing of what hangs on {place}.",
}

REMEDIES = {
    "zone_loss_near": "Keep it so knowingly, or fit thicker cable, first in the section that wastes"
    " most.",
    "zone_loss_over": "Fit thicker cable, first in the section that wastes most; else split the"
    " line or feed it from the middle.",
    "zone_loss_near_bounded": "Keep it so knowingly, or fit thicker cable.",
    "zone_loss_over_bounded": "Fit thicker cable, first in the section that wastes most; else split"
    " the line or feed it from the middle.",
    "zone_loss_unknown_section": "Enter the length and the cable of every section.",
    "zone_loss_unknown_load": "Enter every tap that can be seen.",
    "zone_loss_not_entered": "Enter the length and the cable of every section.",
    "zone_loss_inside": "Measure volts at the far end, or draw the line.",
    "zone_loss_too_long": "Look whether a length was typed in the wrong unit.",
    "zone_loss_10k_more_heavy": "More copper does not cure this: split the line.",
    "zone_impedance_unknown": "Enter what is missing, or measure and keep the reading.",
    "zone_impedance_between": "Enter what is missing, or measure and keep the reading.",
}

STEPS = {
    "limit_volts": "The loss that is allowed, as a share of the volts",
    "limit_watts": "The same as a share of a loudspeaker's watts",
    "limit_ohms": "The same as the cable's ohms, out and back, over a load's at its end",
    "cable_area": "{cable}: copper of the gauge",
    "cable_copper": "{cable}: one solid conductor at 20 °C",
    "cable_stranded": "{cable}: stranded",
    "cable_tinned": "{cable}: tinned",
    "cable_clad": "{cable}: copper-clad aluminium",
    "cable_between": "{cable}: from the nearest printed size",
    "cable_heat": "{cable}: at its working heat",
    "cable_loop": "{cable}: out and back",
    "line_ohms": "The section to {point}",
    "line_beyond": "What hangs beyond the section to {point}, by its watts alone",
    "line_current": "Current through the section to {point}",
    "line_across": "Volts across the section to {point}",
    "line_section": "What the section to {point} loses, from the volts in front of it to those"
    " behind it",
    "line_path": "All sections on the way to the worst loudspeaker",
    "line_in": "Watts into the line",
    "line_played": "Watts at the loudspeakers",
    "line_copper": "Watts in the copper",
    "line_controls": "Watts in the controls",
    "line_balance": "All that leaves the line: as much as goes in",
    "line_loss": "From the terminals to the loudspeaker",
    "line_nominal": "From the nominal voltage to the loudspeaker",
    "line_nearest": "From the nearest loudspeaker to the worst",
    "line_spread": "Between the two",
    "quiet_ratio": "The usual draw of its neighbours against its own",
    "quiet_tap": "By its tap",
    "quietest": "By all three",
    "line_waste": "What stays in the copper of the section to {point}",
    "line_load": "The load without its cable",
    "line_own": "The pair's own impedance",
    "line_reads": "What the meter reads",
    "line_reads_low": "What it reads at least",
    "line_reads_high": "What it reads at most",
    "line_loss_low": "The least it can be",
    "line_loss_high": "The most it can be",
    "line_beside": "Side by side",
}

NAMES = {
    "awg": "gauge",
    "area_mm2": "copper",
    "printed_mm2": "printed size",
    "ohm_per_km": "one conductor",
    "printed_ohm_per_km": "printed",
    "loop_ohm_per_km": "out and back",
    "lay_factor": "stranding",
    "tin_factor": "tinning",
    "conductivity_fraction": "conducts",
    "conductor_c": "heat",
    "length_m": "length",
    "joint_ohm": "joint",
    "spacing_factor": "spacing",
    "permittivity_factor": "permittivity",
    "inductance_uh_per_m": "inductance",
    "capacitance_pf_per_m": "capacitance",
    "from_v": "from",
    "at_v": "at",
    "open_v": "unloaded",
    "source_ohm": "the amplifier's own",
    "series_ohm": "ohms",
    "reactance_ohm": "reactance",
    "conductance_s": "load beyond",
    "susceptance_s": "its reactive part",
    "each_db": "each",
    "each_s": "each",
    "most_db": "most",
    "least_db": "least",
    "current_a": "current",
    "loss_db": "loss",
}

ASSUMPTIONS = {
    "direct_copper": "The copper counts with its resistance to direct current, which is right"
    " within 0.3 % at 1 kHz.",
    "treble_copper": "Each conductor counts as one solid round wire with the current in its skin;"
    " what the two wires of the pair do to each other is left out.",
    "treble_load": "Loudspeakers keep their nominal ohms at 10 kHz. Real ones rise, so this is"
    " rather too much loss than too little.",
    "section_near": "A section whose length or cable is not known counts as none, for the points"
    " that do not hang on it: the most they can lose.",
    "amplifier_stiff": "The amplifier's own impedance is not known and counts as none: its"
    " terminals keep the nominal voltage.",
    "form_not_known": "A control whose make is not known counts as an autotransformer.",
    "insertion_not_known": "A control whose insertion loss is not known counts as having none;"
    " 0.4 to 1 dB is usual (common practice).",
    "loop_at_20": "A measured loop resistance counts as measured at 20 °C.",
    "clad_lowest": "Copper-clad aluminium counts with 62 % of the conductivity of copper; 62 to"
    " 68 % is reported.",
    "heat_outside": "Beyond −20 to 100 °C the resistance of copper is reckoned on in the same"
    " straight line.",
    "pair_usual": "The pair's inductance or capacitance is not known; 0.63 µH/m and 63 pF/m are"
    " taken, a jacketed pair two diameters apart (common practice).",
    "strands_not_known": "Whether the gauge is stranded is not known; it counts as stranded, 2 %"
    " more.",
    "seven_wires": "A tinned stranded gauge counts as made of seven wires.",
    "class_not_known": "The class of the metric cable is not known; it counts as flexible, the"
    " most ohms.",
    "size_between": "A size that no table prints is reckoned from the nearest printed one below.",
}

CABLES = {
    "awg_22": "22 AWG",
    "awg_20": "20 AWG",
    "awg_18": "18 AWG",
    "awg_16": "16 AWG",
    "awg_14": "14 AWG",
    "awg_12": "12 AWG",
    "awg_10": "10 AWG",
    "mm2_0_5": "0.5 mm²",
    "mm2_0_75": "0.75 mm²",
    "mm2_1": "1 mm²",
    "mm2_1_5": "1.5 mm²",
    "mm2_2_5": "2.5 mm²",
    "mm2_4": "4 mm²",
    "mm2_6": "6 mm²",
}

# Which cable: why nothing can be chosen, why not the next thinner, and what else would help.
CHOICES = {
    "pick": "{cable} is the thinnest that passes: the worst loudspeaker loses {loss_db} of the"
    " {limit_db} that are allowed.",
    "pick_none": "None of these cables keeps the worst loudspeaker within {limit_db}.",
    "refused_not_landed": "The zone is on no output, so its line voltage is not known.",
    "refused_no_loudspeakers": "There is no connected loudspeaker on this line.",
    "refused_lengths_unknown": "The length of a section is not known. Touch Lengths and type them.",
    "refused_load_unknown": "A tap is not known, and nothing bounds it. Enter it, or its kind.",
    "refused_cables_unknown": "A cable is not known. Enter the cable of every section first.",
    "refused_nothing_passes": "No length passes: the joints alone lose more than {limit_db}.",
    "why_not_loses_too_much": "With {thinner} it would lose {thinner_loss_db}.",
    "why_not_too_thin": "{thinner} would pass as well, but is thinner than you want.",
    "why_not_none_thinner": "There is none thinner in the list.",
    "step_up": "{cable} to {section} alone: {loss_db}, {gain_db} better.",
    "rescue_split": "Split the line: a second home run of {run_m} to {point}, with {cable}. The"
    " worst loudspeaker then loses {loss_db}.",
    "rescue_feed_middle": "Feed it from the middle: the home run to {point}, if {run_m} reach"
    " there, with {cable}. The worst loudspeaker then loses {loss_db}.",
    "rescue_higher_voltage": "A line of {line_v}, with {cable}: the worst loudspeaker then loses"
    " {loss_db}. Every tap, every control and the wiring class must be redone for it.",
    "longest": "With {cable}, as it is there now, the line may run {longest_m} to its far end; it"
    " runs {far_m} now.",
}
