"""The manual's page about made-up road tests: what it says is what was counted, and still is."""

from __future__ import annotations

import importlib.util
import json
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


def load(path: str):
    """A module of the benchmarks or of another test folder, which are no packages."""
    place = ROOT / path
    spec = importlib.util.spec_from_file_location(f"by_path_{place.stem}", place)
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="module")
def data():
    file = ROOT / "benchmarks" / "results" / "road_tests.json"
    return json.loads(file.read_text(encoding="utf-8"))


def test_the_page_shows_the_counts_that_are_checked_in(data):
    page = load("benchmarks/road_tests_page.py").page(data)
    assert (ROOT / "procedures" / "road-tests-judged.md").read_text(encoding="utf-8") == page


def test_every_road_test_is_counted_once(data):
    causes = load("benchmarks/road_tests_page.py").CAUSES
    told = [(each["cause"], each["readings"]) for each in data["counted"]]
    assert told == [(cause, readings) for cause in causes for readings in (7, 4, 2)]
    for counts in data["counted"]:
        outcomes = {key: n for key, n in counts.items() if key not in {"cause", "readings"}}
        assert sum(outcomes.values()) == data["tests"]


@pytest.mark.parametrize("readings", [7, 2])
def test_the_calculator_still_judges_as_counted(data, readings):
    [counts] = [
        each
        for each in data["counted"]
        if (each["cause"], each["readings"]) == ("vacuum-loss", readings)
    ]
    simulate = load("tests/calculators/test_simulated_road_tests.py").simulate
    found = simulate("vacuum-loss", data["tests"], readings)
    for outcome in ("named", "open", "wrong"):
        # Another machine's last digit may tip a test that stands on the edge.
        assert found[outcome] == pytest.approx(counts.get(outcome, 0), abs=data["tests"] / 100)
