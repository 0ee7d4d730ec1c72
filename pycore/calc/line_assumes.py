"""What the numbers about a line take for granted, as codes the words tables know."""

from pycore.calc.finding import Finding
from pycore.calc.solve import Line

TREBLE = ("zone_loss_10k_db",)


def assumed(line: Line, finding: Finding) -> tuple[str, ...]:
    """What a finding about a line takes for granted."""
    codes = ["nominal_load", "bypassed" if line.state == "override" else "as_set"]
    codes.append("treble_copper" if finding.what in TREBLE else "direct_copper")
    if finding.what in TREBLE:
        codes.append("treble_load")
    if any(draw.value is None or draw.low != draw.high for draw in line.laid.draws):
        codes.append("range_of_taps")
    if any(line.laid.beyond):
        codes.append("section_near")
    if line.output.source_ohm is None and not finding.what.endswith("impedance_ohm"):
        codes.append("amplifier_stiff")
    if line.state == "set":
        codes.extend(_controls(line))
    for pair in line.laid.pairs:
        codes.extend(pair.assumptions if pair is not None else ())
    return tuple(dict.fromkeys(codes))


def _controls(line: Line) -> list[str]:
    """What is taken of the controls as they stand."""
    codes = []
    for fitted, facts in line.laid.controls.values():
        if not fitted.off and facts.form is None:
            codes.append("form_not_known")
        if not fitted.off and facts.insertion_db is None:
            codes.append("insertion_not_known")
    return codes
