"""Published figures for the tests of the calculators, each with its source (tests/published)."""

import json
from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest


class Case(NamedTuple):
    """A published case: inputs and what they should give, as plain values."""

    inputs: dict
    expected: object
    tolerance: dict


@cache
def read(name):
    folder = Path(__file__).parents[1] / "published"
    return {case["id"]: case for case in json.loads((folder / f"{name}.json").read_text())}


def plain(values):
    """Values without their units, which the tests name; a single one without its name."""
    if "value" in values:
        return values["value"]
    return {name: value["value"] for name, value in values.items()}


@pytest.fixture(scope="session")
def published():
    """Look up a case by file and id."""

    def look_up(name, wanted):
        case = read(name)[wanted]
        allowed = {key: case["tolerance"].get(key) for key in ("rel", "abs")}
        return Case(plain(case["inputs"]), plain(case["expected"]), allowed)

    return look_up
