"""The demo manual itself, read once: what is asserted here is its content, not the builder."""

from pathlib import Path

import pytest

from underhoist.checker import Checker

PROCEDURES = Path(__file__).resolve().parents[2] / "procedures"


@pytest.fixture(scope="session")
def manual():
    found = {file.relative_to(PROCEDURES).as_posix(): file for file in PROCEDURES.rglob("*.*")}
    pages = {name: file.read_bytes() for name, file in found.items() if file.suffix == ".md"}
    return Checker(pages, others=found.keys() - pages.keys()).checked().manual
