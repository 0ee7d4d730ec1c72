"""English: what each finding says, and what helps. {place} is the name of where it is."""

TITLES = {
    "output_load_w": "{place}: load",
    "pool_load_w": "{place}: shared watts",
    "zone_load_w": "{place}: load",
    "sound_change_db": "{place}: louder or quieter",
    "row_load_w": "From {place} on: the row",
    "output_load_share": "{place}: share of its watts",
    "output_load_left_w": "{place}: watts left",
    "pool_load_share": "{place}: share of the shared watts",
    "pool_load_left_w": "{place}: shared watts left",
    "attenuator_load_share": "{place}: share of what it may carry",
    "attenuator_load_left_w": "{place}: watts left below it",
    "output_impedance_ohm": "{place}: impedance",
    "attenuator_load_w": "{place}: load below it",
    "meter_reading": "{place}: measured",
    "foreign_v": "{place}: foreign volts",
    "wrong_voltage": "{place}: voltage row",
    "wrong_rows_count": "Taps marked for another voltage",
    "direct_load_w": "{place}: low-impedance position",
    "tap_offered": "{place}: tap",
    "heard_in_page": "{place}: heard in a page",
    "zone_landed": "{place}: output",
    "high_pass_hz": "{place}: high-pass filter",
    "drive": "{place}: direct drive",
    "wiring_class": "{place}: wiring class",
    "what_fits": "{place}: what still fits",
}

FINDINGS = {
    "output_load_ok": "{place} carries {value} of its {limit}; {left} left.",
    "output_load_ok_shared": "{place} carries {value} of its {limit}; {left} left, all that is left"
    " of the watts that outputs of {shared_by} share.",
    "output_load_near": "No reserve: {place} carries {value} of its {limit}, more than the"
    " {fraction} planned for.",
    "output_load_over": "{place} is asked for {value} and has {limit}: {excess} too much. If left"
    " like this, the amplifier trips or overheats.",
    "output_load_unknown": "The load on {place} is {value} and its maximum is {limit}: whether that"
    " fits cannot be said.",
    "pool_load_ok": "{value} is asked of the {limit} that outputs of {place} share; {left} left.",
    "pool_load_ok_feeds": "{value} is asked of the {limit} that outputs of {place} share; {left}"
    " left, all that its outputs can still take by their own maxima.",
    "pool_load_near": "No reserve: {value} is asked of the {limit} that outputs of {place} share,"
    " more than the {fraction} planned for.",
    "pool_load_over": "{value} is asked of the {limit} that outputs of {place} share: {excess} too"
    " much, whatever each one carries. If left like this, the amplifier trips.",
    "pool_load_unknown": "The load on the {limit} that outputs of {place} share is {value}: whether"
    " that fits cannot be said.",
    "pool_not_known_unknown": "The load on all outputs of {place} together is {value}. Whether they"
    " share watts is not known.",
    "zone_load": "The load of {place} is {value}.",
    "sound_change": "{place} becomes louder by {value}.",
    "row_load": "From {place} on ({count}): {value}.",
    "load_share": "{place}: {value} of {most_w} is asked for.",
    "load_left_w": "{place}: {value} of {most_w} is left.",
    "impedance_ok": "{place} sees {value}, well above its printed minimum of {limit}.",
    "impedance_near": "No reserve: {place} sees {value} and its printed minimum is {limit}.",
    "impedance_over": "{place} sees {value}, below its printed minimum of {limit}. If left like"
    " this, the amplifier trips.",
    "impedance_unknown": "The nominal impedance on {place} is {value} and the printed minimum is"
    " {limit}: whether that is enough cannot be said.",
    "impedance_open": "Nothing is connected to {place}; its printed minimum is {limit}.",
    "attenuator_load_ok": "{place} carries {value} of the {limit} it may carry on this line.",
    "attenuator_load_near": "No reserve: {place} carries {value} of the {limit} it may carry on"
    " this line.",
    "attenuator_load_over": "{place} carries {value} and may carry {limit} on this line. If left"
    " like this, it burns, slowly.",
    "attenuator_load_unknown": "The load below {place} is {value} and its rating on this line is"
    " {limit}: whether that fits cannot be said.",
    "attenuator_volts_over": "{place} is marked for {rated_at_v} and stands on a {line_v} line."
    " If left like this, it overheats.",
    "meter_live": "Stop: the line at {place} is not dead. Touch nothing on it: {value} was read,"
    " where {limit} is the most.",
    "meter_live_beyond": "Stop: the line at {place} is not dead. Touch nothing on it: it read more"
    " than the meter can show.",
    "meter_short": "The meter says: do not connect. The line at {place} reads as a short.",
    "meter_too_low": "The meter says: do not connect. {place} reads {value}, below the {limit} this"
    " output can bear.",
    "meter_at_limit": "The meter says: do not connect yet. {place} reads {value}, which may be"
    " below the {limit} this output can bear.",
    "voltage_above": "The tap of {place} is marked for {tap_at_v} and the line is {line_v}: it"
    " draws its marked watts {value} ({drawn_w}). If left like this, the amplifier may trip or the"
    " loudspeaker burn.",
    "voltage_below": "The tap of {place} is marked for {tap_at_v} and the line is {line_v}: it"
    " draws its marked watts {value} ({drawn_w}), and plays {change_db} quieter. Nothing is"
    " harmed.",
    "voltage_waiting": "{place} is disconnected. Its tap is marked for {tap_at_v} and the line is"
    " {line_v}: connected, it would draw its marked watts {value} ({drawn_w}).",
    "wrong_rows": "On a tap marked for another voltage: {value}.",
    "direct_across_line": "The selector of {place} stands on {direct_ohm}, straight across the"
    " {line_v} line: it would take {value}. The amplifier trips or the loudspeaker burns.",
    "direct_waiting": "{place} is disconnected. Its selector stands on {direct_ohm}: connected, it"
    " would take {value} straight across the {line_v} line.",
    "tap_not_allowed": "The maker does not allow {tap_w} at {tap_at_v} on {place}. If left like"
    " this, the loudspeaker may burn.",
    "tap_not_offered": "{place} is entered on {tap_w} at {tap_at_v}; its kind, “{kind}”, offers no"
    " such tap.",
    "page_over": "{place} is silent in a page: {attenuator} stands off and nothing overrides it.",
    "page_unknown": "{place} is below {attenuator}, which stands off. Whether a page overrides it"
    " is not known.",
    "page_ok": "{place} is heard in a page: {attenuator} stands off and a page overrides it. That"
    " says nothing of an emergency.",
    "zone_not_landed": "{place} is on no output, so nothing of it is counted.",
    "high_pass_set": "{place} has a high-pass filter at {value}.",
    "high_pass_low": "The high-pass filter of {place} is at {value}; lines of transformers usually"
    " have {limit} or more (common practice). On loud bass the amplifier may trip.",
    "high_pass_not_known": "Whether {place} has a high-pass filter is not known.",
    "drive_direct": "{place} drives its line without a transformer: neither leg may meet earth or"
    " another output.",
    "class_marked": "The wiring class marked on {place} is {marked_class}. That marking and the"
    " local code decide.",
    "fits": "{with_reserve} more at {tap_w} with reserve, {to_rating} to the rating. The first"
    " limit met is that of {first_id}.",
    "fits_kind": "{with_reserve} more “{kind}” at {tap_w} with reserve, {to_rating} to the rating."
    " The first limit met is that of {first_id}.",
    "fits_partly": "By the limits that are known, {with_reserve} more at {tap_w} with reserve,"
    " {to_rating} to the rating. A limit of {missing_id} is not known.",
    "fits_partly_kind": "By the limits that are known, {with_reserve} more “{kind}” at {tap_w} with"
    " reserve, {to_rating} to the rating. A limit of {missing_id} is not known.",
    "fits_all": "{to_rating} more at {tap_w} meet no limit; more than that is not counted.",
    "fits_all_kind": "{to_rating} more “{kind}” at {tap_w} meet no limit; more than that is not"
    " counted.",
    "fits_unknown": "How many more at {tap_w} fit is not known: a limit or a load is not known.",
}

REMEDIES = {
    "output_load_near": "Accept it knowingly, choose smaller taps, or move a zone.",
    "output_load_over": "Choose smaller taps, move a zone to another output, or fit a larger"
    " amplifier.",
    "output_load_unknown": "Enter the output's maximum watts and every tap that can be seen.",
    "pool_load_near": "Accept it knowingly, choose smaller taps, or move a zone to another"
    " amplifier.",
    "pool_load_over": "Choose smaller taps or move a zone to another amplifier.",
    "pool_load_unknown": "Enter every tap that can be seen.",
    "pool_not_known_unknown": "Read the amplifier's data: enter the watts its outputs share, or"
    " that they share none.",
    "impedance_near": "Choose smaller taps, or measure before connecting.",
    "impedance_over": "Choose smaller taps or move a zone. Do not connect it as it is.",
    "impedance_unknown": "Enter every tap that can be seen, or measure the line.",
    **dict.fromkeys(
        ("meter_live", "meter_live_beyond"),
        "Find where it comes from, switch that off and lock it, then measure the volts there again:"
        " what is read last counts. A reading that was wrong is taken back at the meter.",
    ),
    **dict.fromkeys(
        ("meter_short", "meter_too_low", "meter_at_limit"),
        "Leave the amplifier off until it is found. Once mended, measure there again in the same"
        " way: what is read last counts. A reading that was wrong is taken back at the meter.",
    ),
    "attenuator_load_near": "Accept it knowingly, or choose smaller taps below it.",
    "attenuator_load_over": "Fit a larger control, choose smaller taps below it, or put fewer"
    " loudspeakers behind it.",
    "attenuator_load_unknown": "Read the watts and volts on the control and enter them.",
    "attenuator_volts_over": "Fit a control made for this line voltage.",
    "voltage_above": "Line dead, turn the selector to the row for {line_v}.",
    "voltage_below": "For full level, line dead, turn the selector to the row for {line_v}.",
    "voltage_waiting": "Turn the selector to the row for {line_v} before connecting it.",
    "wrong_rows": "On a tap marked for another voltage: {value}.",
    "direct_across_line": "Line dead, turn the selector to a tap for {line_v}. Do not switch on"
    " before.",
    "direct_waiting": "Turn the selector to a tap for {line_v} before connecting it.",
    "tap_not_allowed": "Line dead, choose a smaller tap.",
    "tap_not_offered": "Look at the selector again, or correct the kind.",
    "page_over": "Turn the control on, or fit one that a page overrides.",
    "page_unknown": "Read the control and its wiring, and enter whether a page overrides it.",
    "zone_not_landed": "Choose the output it hangs on.",
    "high_pass_low": "Set the filter to {limit} or higher.",
    "high_pass_not_known": "Read it from the amplifier or the processor and enter it.",
    "drive_direct": "Keep returns apart, lift earthed test leads, and never join two outputs.",
    "fits_unknown": "Enter the maximum watts and the taps that are not known.",
    "fits_partly": "Enter what is not known of {missing_id}.",
    "fits_partly_kind": "Enter what is not known of {missing_id}.",
}
