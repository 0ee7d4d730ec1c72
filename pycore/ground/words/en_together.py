"""English: alike faults at several places that nothing read so far tells apart, told as one."""

ONE_OF = {
    "dead": "One of these {n} is dead: {names}.",
    "tap": "One of these {n} stands on another tap: {names}.",
    "direct": "The selector of one of these {n} stands on low impedance: {names}.",
    "extra": "At one of these {n} something more hangs on the line than is drawn: {names}.",
    "extra_low": "At one of these {n} a low-impedance loudspeaker hangs on the line: {names}.",
    "cut": "The line is broken in front of one of these {n}: {names}.",
    "short": "The pair is shorted in front of one of these {n}: {names}.",
    "short_unplaced": "A short, somewhere on the line. Its lengths or cable are not known and were"
    " taken as usual ones, so these ohms do not tell in front of which of these {n} it lies:"
    " {names}.",
    "joint": "A bad joint in front of one of these {n}: {names}.",
    "control_off": "One of these {n} controls stands off: {names}.",
    "control_in": "One of these {n} controls stands in the line: {names}.",
    "control_reversed": "The input and output of one of these {n} controls are exchanged: {names}.",
    "override_fails": "One of these {n} controls is not bypassed: {names}.",
    "series": "From one of these {n} on the loudspeakers are wired one behind the other: {names}.",
    "wet": "Damp across the pair at one of these {n}: {names}.",
    "earthed": "A leg of the line touches earth at one of these {n}: {names}.",
}

SAID = {
    "names_more": "{names} and {n} more",
    "healthy_outside": "Nothing else is likelier, yet a reading lies outside its band. {words}",
    "heavy_as_drawn": "{words} The line is in order for what hangs on it, and what hangs on it is"
    " too much: choose smaller taps, or another output.",
    "inside_but": "All that was read lies in its band. Ruled out by that is not: {words}",
}

PAGE = {
    "meter.each": "Each by itself",
}
