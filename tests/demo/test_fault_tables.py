"""Fault tables that a computed order of checks can stand on; likelihoods are this shop's own."""

from pathlib import Path

import pytest

from underhoist.complaints import bad_shares, complaint_of
from underhoist.fault_families import families_of

PROCEDURES = Path(__file__).resolve().parents[2] / "procedures"
FAULTS = sorted(file.stem for file in (PROCEDURES / "faults").glob("*.md"))
COVERED = {
    "late-shifts", "early-shifts", "bumps", "soft-shifts", "missing-shift", "no-kick-down",
    "slips", "no-drive-cold", "fluid-falls", "overheats", "buzz-or-whine",
    "smoke-and-late-shifts", "leaks-by-place", "rear-weep", "cable-shifts",
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

    def test_every_cause_is_found_by_a_check_on_every_family(self, manual, name):
        fault = manual.faults[name]
        for family in families_of(manual, fault):
            complaint = complaint_of(manual, fault, family)
            found = {id_ for each in complaint.checks for id_, share in each.bad.items() if share}
            assert found == {each.id for each in complaint.listed}, family

    def test_no_check_tells_nothing_or_everything(self, manual, name):
        fault = manual.faults[name]
        for check in fault.checks.values():
            assert 0 < len(bad_shares(check)) < len(fault.causes) - 1, check.name.value

    def test_at_least_one_check_is_not_certain(self, manual, name):
        assert any(check.bad_with for check in manual.faults[name].checks.values())

    def test_it_says_that_its_shares_are_invented(self, manual, name):
        assert "shares and the minutes on this page are invented" in manual.faults[name].body.text

    def test_every_check_names_its_procedure_and_an_access_of_the_list(self, manual, name):
        for check in manual.faults[name].checks.values():
            assert check.procedure
            assert check.access.value in manual.access

    def test_every_cause_has_a_way_to_mend_it(self, manual, name):
        for id_, cause in manual.faults[name].causes.items():
            assert bool(cause.procedures) == (id_ != "none-of-these"), cause.name.value


@pytest.mark.parametrize(
    ("place", "calculator", "answers", "causes"),
    [
        ("cable-shifts moved-by-the-cable", "shift-check", ["cable-tight", "cable-slack"],
         {"cable-set-wrong", "throttle-stops-short"}),
        ("cable-shifts comes-back", "shift-check", ["cable-hangs", "full-throttle"],
         {"cable-sticks"}),
        ("cable-shifts drive-it", "shift-check", ["scale"],
         {"tyres-or-axle", "governor-sticks"}),
        ("late-shifts late-as-without-vacuum", "shift-check", ["vacuum-loss"],
         {"signal-hose", "signal-source", "modulator-diaphragm", "modulator-setting"}),
        ("late-shifts drive-it", "shift-check", ["scale"], {"tyres-or-axle", "governor-weak"}),
        ("late-shifts vacuum-at-the-modulator", "signal-vacuum",
         ["line-losing", "low-and-losing", "source-low"],
         {"signal-hose", "signal-source", "modulator-diaphragm"}),
        ("smoke-and-late-shifts late-as-without-vacuum", "shift-check", ["vacuum-loss"],
         {"diaphragm-broken", "diaphragm-and-old-hose"}),
    ],
)  # fmt: skip
def test_what_an_answer_of_a_calculator_speaks_for(manual, place, calculator, answers, causes):
    fault, check = place.split()
    settled = manual.faults[fault].checks[check]
    assert [each.value for each in settled.calculators[calculator].bad] == answers
    assert set(bad_shares(settled)) == causes


def test_one_wash_serves_both_looks_at_the_tail(manual):
    fault = manual.faults["rear-weep"]
    assert {fault.checks[each].access.value for each in ("trace-it", "streak-at-the-lip")} == {
        "washed and dusted"
    }
    assert manual.access["washed and dusted"].minutes.value == 30
