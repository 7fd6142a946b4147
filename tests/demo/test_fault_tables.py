"""Fault tables that a computed order of checks can stand on; likelihoods are this shop's own."""

from pathlib import Path

import pytest

PROCEDURES = Path(__file__).resolve().parents[2] / "procedures"
FAULTS = sorted(file.stem for file in (PROCEDURES / "faults").glob("*.md"))
COVERED = {
    "late-shifts", "early-shifts", "bumps", "soft-shifts", "missing-shift", "no-kick-down",
    "slips", "no-drive-cold", "fluid-falls", "overheats", "buzz-or-whine",
    "smoke-and-late-shifts", "leaks-by-place",
}  # fmt: skip


def test_every_complaint_of_the_trade_has_its_page():
    assert set(FAULTS) >= COVERED


@pytest.mark.parametrize("name", FAULTS)
class TestFault:
    def test_likelihoods_make_a_hundred(self, manual, name):
        causes = manual.faults[name].causes.values()
        assert sum(cause.likelihood.value for cause in causes) == pytest.approx(1)

    def test_nothing_is_certain_none_of_these_has_its_share(self, manual, name):
        assert 0.02 <= manual.faults[name].causes["none-of-these"].likelihood.value <= 0.10

    def test_every_cause_is_found_by_a_check(self, manual, name):
        fault = manual.faults[name]
        found = {each.value for check in fault.checks.values() for each in check.rules_out}
        assert found == fault.causes.keys() - {"none-of-these"}

    def test_no_check_tells_nothing_or_everything(self, manual, name):
        fault = manual.faults[name]
        for check in fault.checks.values():
            assert 0 < len(check.rules_out) < len(fault.causes) - 1, check.name.value

    def test_every_check_names_its_procedure_and_an_access_of_the_list(self, manual, name):
        for check in manual.faults[name].checks.values():
            assert check.procedure
            assert check.access.value in manual.access

    def test_every_cause_has_a_way_to_mend_it(self, manual, name):
        for id_, cause in manual.faults[name].causes.items():
            assert bool(cause.procedures) == (id_ != "none-of-these"), cause.name.value
