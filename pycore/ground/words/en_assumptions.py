"""English: what a working takes for granted."""

ASSUMPTIONS = {
    "nominal_load": "Every tap draws its nominal watts. Real loudspeakers differ by 10 to 20 %"
    " (common practice).",
    "bypassed": "Every control stands at full level or is bypassed, as in a page: the most the"
    " line can ask for.",
    "as_set": "Every control stands as it is written in the job.",
    "range_of_taps": "Where a tap is not known, the lowest and the highest of its kind are taken;"
    " the low-impedance position is not counted. A measured part is taken as 0.9 to 1.3 of nominal"
    " (common practice).",
    "no_relief": "Full line volts at the control: no relief from cable or insertion is counted.",
    "counted_by_trial": "Found by adding loudspeakers and judging every limit again.",
    "at_the_end": "The new loudspeakers hang at the far end of the zone, below its controls.",
}
