"""Line voltages as they are printed on parts, and which of them are one voltage."""

import math

# 70, 70.7, 71 and 100/√2 are printed for one and the same line (common practice, no source).
SEVENTY_V = 70.7
SEVENTY_MARKS_V = (69.9, 71.1)
SLACK = 1e-9


def true_voltage(marked_v: float) -> float:
    """The voltage a mark stands for, volts: anything printed 70 to 71 is the 70.7 V line."""
    low_v, high_v = SEVENTY_MARKS_V
    return SEVENTY_V if low_v <= marked_v <= high_v else marked_v


def same_voltage(one_v: float, other_v: float) -> bool:
    """Whether two marks stand for one line voltage (both in volts)."""
    return math.isclose(true_voltage(one_v), true_voltage(other_v), rel_tol=SLACK)
