"""A limit that a reading repeats from its family is the family's: one value, told in two places."""

import pytest

WINDOWS = {
    ("road-test-before", "shift-1-2-light"): ("1-2", "light"),
    ("road-test-before", "shift-2-3-light"): ("2-3", "light"),
    ("road-test-before", "shift-1-2-half"): ("1-2", "half"),
    ("road-test-before", "shift-2-3-half"): ("2-3", "half"),
    ("road-test-before", "shift-1-2-full"): ("1-2", "full"),
    ("road-test-before", "kick-down-3-2"): ("3-2", "full"),
    ("road-test-after", "left-1-2-light"): ("1-2", "light"),
    ("road-test-after", "left-2-3-light"): ("2-3", "light"),
    ("road-test-after", "left-1-2-half"): ("1-2", "half"),
    ("road-test-after", "left-2-3-half"): ("2-3", "half"),
    ("road-test-after", "left-1-2-full"): ("1-2", "full"),
    ("road-test-after", "left-kick-down"): ("3-2", "full"),
}
PRESSURES = {
    "pressure-vacuum": ("park", "light"),
    "pressure-no-vacuum": ("park", "full"),
    "pressure-reverse": ("reverse", "full"),
}
PARTS = {
    ("modulator-check", "pin-length"): ("modulator-pin", "Short pin", "length"),
    ("drop-pan", "filter-neck"): ("filter", "Shallow-pan filter", "neck height"),
    ("fit-pan-gasket", "gasket-length"): ("pan-gasket", "Twelve-hole gasket", "length over all"),
    ("signal-vacuum-supply", "hose-bore"): ("signal-hose", "Vacuum hose, 1/4 in bore", "bore"),
    ("governor-check", "governor-length"): ("governor", "Governor of the six-cylinder", "length"),
}
TEMPERATURES = [
    ("fluid-level", "fluid-temperature"),
    ("staged-refill", "refill-temperature"),
    ("stall-test", "stall-temperature"),
]


@pytest.fixture
def kestrel(manual):
    return manual.families["kestrel-3"]


def limits(manual, procedure, reading):
    return manual.procedures[procedure].readings[reading].limits.value


@pytest.mark.parametrize("where", WINDOWS)
def test_road_test_has_the_shift_windows(manual, kestrel, where):
    windows = {
        (each.shift.value, each.throttle.value): each.speed.value for each in kestrel.shift_windows
    }
    assert limits(manual, *where) == windows[WINDOWS[where]]


@pytest.mark.parametrize("reading", PRESSURES)
def test_line_pressure_has_the_family_pressures(manual, kestrel, reading):
    pressures = {
        (each.selector.value, each.throttle.value): each.pressure.value
        for each in kestrel.line_pressure
    }
    assert limits(manual, "line-pressure", reading) == pressures[PRESSURES[reading]]


@pytest.mark.parametrize("where", PARTS)
def test_a_measured_part_has_the_size_of_its_variant(manual, kestrel, where):
    part, variant, measure = PARTS[where]
    (found,) = [each for each in kestrel.parts[part].variants if each.name.value == variant]
    assert limits(manual, *where) == found.measures[measure].value


@pytest.mark.parametrize("where", TEMPERATURES)
def test_the_level_is_read_at_the_family_temperature(manual, kestrel, where):
    assert limits(manual, *where) == kestrel.fluid.level.temperature.value


def test_the_stall_test_lasts_no_longer_than_the_family_allows(manual, kestrel):
    assert limits(manual, "stall-test", "stall-time").high == kestrel.stall.longest.value
