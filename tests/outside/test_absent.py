"""Where the circuit simulator is missing the comparison is skipped, but never unseen."""

import pytest

from tests.outside.ngspice import find_ngspice


def test_a_missing_simulator_is_skipped_on_a_laptop(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", "")
    monkeypatch.delenv("CI", raising=False)
    with pytest.raises(pytest.skip.Exception, match="ngspice is not here"):
        find_ngspice()


def test_a_missing_simulator_fails_where_nobody_would_see_a_skip(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("PATH", "")
    monkeypatch.setenv("CI", "true")
    with pytest.raises(pytest.fail.Exception, match="ngspice is not here"):
        find_ngspice()
