"""A small manual without faults, as a site, as it is or changed by a test."""

import shutil
from pathlib import Path

import pytest
from attrs import evolve

from underhoist.check import check
from underhoist.pages import make_site, sheets

CALCULATORS = ("staged-fill", "shift-check", "torque-units")
"""These only: a new calculator must not change what the tests hold exactly."""

MANUAL = Path(__file__).parent / "manual"


def site_of(folder, *, demo=False):
    checked = check(folder)
    assert checked.stops == 0, checked.findings
    site = make_site(checked.manual, folder, name="A small manual", demo=demo)
    return evolve(site, calculators={name: site.calculators[name] for name in CALCULATORS})


@pytest.fixture(scope="session")
def site():
    """The small manual as it is."""
    return site_of(MANUAL)


@pytest.fixture(scope="session")
def pages(site):
    """Every page of it by its address."""
    return {sheet.address: sheet for sheet in sheets(site)}


@pytest.fixture
def changed(tmp_path):
    """Makes the site of a copy in which texts are replaced: `changed(file, (old, new), ...)`."""
    folder = Path(shutil.copytree(MANUAL, tmp_path / "manual"))

    def change(file, *replacements, demo=False):
        text = (folder / file).read_text(encoding="utf-8")
        for old, new in replacements:
            assert old in text
            text = text.replace(old, new)
        (folder / file).write_text(text, encoding="utf-8")
        return site_of(folder, demo=demo)

    return change
