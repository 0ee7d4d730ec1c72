"""All faults against all evidence: how likely each is, together one."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc import earth, priors
from pycore.calc.complaints import COMPLAINTS
from pycore.calc.evidence import Evidence, expected_by, rows_of, shared_by
from pycore.calc.faults import Fault
from pycore.calc.hearing import Ears
from pycore.calc.likelihood import Row, Shared, log_likelihoods
from pycore.calc.predict import Expected
from pycore.calc.site import Site


class Proof(NamedTuple):
    """Everything there is to weigh faults by. `bias`: by how much all loudspeakers read high
    (ln), as other lines have told; `load_variance`: what that leaves open."""

    site: Site
    evidence: Sequence[Evidence]
    ears: Ears
    legs: Sequence[earth.Leakage]
    complaint: str | None
    bias: float
    load_variance: float

    @property
    def shared(self) -> Shared:
        """What the readings have in common."""
        return shared_by(self.site, self.evidence, load_variance=self.load_variance)

    @property
    def provoked(self) -> bool:
        """Whether somebody says that something is wrong."""
        return self.complaint is not None or self.ears.complains

    def log_priors(self, faults: Sequence[Fault]) -> list[float]:
        """The logarithm of each fault's prior: its family's weight shared by its members."""
        return log_priors(faults, self)


class Weighed(NamedTuple):
    """Faults with their logarithm (of prior times likelihood, not yet shares), and that of the
    prior in it; what each would make each reading, and the rows that were weighed: by fault,
    then by reading."""

    faults: list[Fault]
    logs: list[float]
    priors: list[float]
    expected: list[tuple[Expected, ...]]
    rows: list[tuple[Row, ...]]


def log_priors(faults: Sequence[Fault], proof: Proof) -> list[float]:
    """The logarithm of each fault's prior: its family's weight divided among its members."""
    sums: dict[str, float] = {}
    for fault in faults:
        sums[fault.family] = sums.get(fault.family, 0.0) + fault.weight
    named = COMPLAINTS[proof.complaint].families if proof.complaint else ()
    logs: dict[str, float] = {}
    for family, total in sums.items():
        if family == "healthy":
            provoked = priors.HEALTHY_WITH_COMPLAINT
            weight = provoked if proof.provoked else priors.HEALTHY_UNPROVOKED
        else:
            weight = priors.FAMILY_WEIGHTS[family]
        weight *= priors.NAMED_BY_COMPLAINT if family in named else 1.0
        logs[family] = math.log(weight / total)
    parts = {weight: math.log(weight) for weight in {fault.weight for fault in faults}}
    return [logs[fault.family] + parts[fault.weight] for fault in faults]


def weigh(faults: list[Fault], proof: Proof) -> Weighed:
    """Weigh every fault by all the evidence."""
    by_reading = [expected_by(one, faults) for one in proof.evidence]
    expected: list[tuple[Expected, ...]] = [()] * len(faults)
    rows: list[tuple[Row, ...]] = [()] * len(faults)
    row_lists = [
        rows_of(one, each, bias=proof.bias)
        for one, each in zip(proof.evidence, by_reading, strict=True)
    ]
    if row_lists:
        expected = list(zip(*by_reading, strict=True))
        rows = list(zip(*row_lists, strict=True))
    shared = proof.shared
    before = log_priors(faults, proof)
    logs = before
    if row_lists:
        likely = log_likelihoods(rows, shared)
        logs = [log + more for log, more in zip(logs, likely, strict=True)]
    more = unmeasured(faults, proof)
    logs = [log + each for log, each in zip(logs, more, strict=True)]
    return Weighed(faults, logs, before, expected, rows)


def unmeasured(faults: Sequence[Fault], proof: Proof) -> list[float]:
    """What ears and legs to earth say of each fault by itself (logarithm)."""
    if not proof.ears.any and not proof.legs:
        return [0.0] * len(faults)
    return [
        proof.ears.log_likelihood(one) + earth.log_likelihood(one, proof.legs) for one in faults
    ]


def shares_of(logs: Sequence[float]) -> list[float]:
    """Shares that add up to one, of logarithms."""
    most = max(logs)
    sizes = [math.exp(one - most) for one in logs]
    total = math.fsum(sizes)
    return [size / total for size in sizes]
