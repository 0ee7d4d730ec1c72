"""English: what a working takes for granted."""

ASSUMPTIONS = {
    "nominal_load": "Every tap draws its nominal watts. Real loudspeakers differ by 10 to 20 %"
    " (common practice).",
    "bypassed": "Every control stands at full level or is bypassed, as in a page: the most the"
    " line can ask for.",
    "as_set": "Every control stands as it is written in the job.",
    "range_of_taps": "Where a tap is not known, the lowest and the highest that its kind offers for"
    " this line are taken; its low-impedance position is not counted. A part of the line that was"
    " measured is taken as 0.9 to 1.3 times what it reads (common practice). Where a transformer's"
    " loss is not known, 0.5 to 1.5 dB are taken (common practice).",
    "no_relief": "Full line volts at the control, with everything below it at full level: no relief"
    " from cable or from other controls is counted.",
    "counted_by_trial": "Found by trial: loudspeakers are added as the command adds them, and every"
    " limit of watts and ohms is asked again until one is broken. What is left is never divided."
    " Cable loss is not part of it.",
    "controls_bypassed": "Compared with every control bypassed.",
    "by_taps_alone": "Where the cable is not known before and after, only the watts are compared.",
    "at_the_end": "The new loudspeakers hang at the far end of the zone, below its controls.",
}
