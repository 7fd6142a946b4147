"""The compiled wheels: complete, lean, equal for equal contents, compiled only once."""

from __future__ import annotations

import os
import shutil
import zipfile
from pathlib import Path

import pytest

from underhoist.browser import distributions, tools, wheels


@pytest.fixture(scope="module")
def kept(cache):
    return cache / "wheels"


@pytest.fixture(scope="module")
def compiled(kept):
    return wheels.compiled(kept)


def names(wheel: Path) -> list[str]:
    with zipfile.ZipFile(wheel) as archive:
        return archive.namelist()


def test_everything_a_calculator_imports_is_there_once(compiled):
    projects = [wheel.name.split("-")[0] for wheel in compiled]
    assert projects[0] == "underhoist_calculators"
    assert sorted(projects[1:]) == [
        "attrs", "flexcache", "flexparser", "pint", "platformdirs", "typing_extensions",
    ]  # fmt: skip


def test_the_python_of_the_runtime_compiled_them(compiled):
    assert {wheel.name.split("-")[2] for wheel in compiled} == {"cp313"}


def test_neither_sources_nor_tests_nor_the_large_unit_list_are_sent_to_a_phone(compiled):
    held = [name for wheel in compiled for name in names(wheel)]
    assert "underhoist_calculators/door.pyc" in held
    assert "underhoist_calculators/units.txt" in held
    assert [name for name in held if name.endswith((".py", ".pyi"))] == []
    assert [name for name in held if "testsuite" in name or "default_en" in name] == []


def test_licences_travel_with_the_code(compiled):
    for wheel in compiled[1:]:
        assert any("LICENSE" in name for name in names(wheel)), wheel.name


def test_the_record_names_every_file(compiled):
    for wheel in compiled:
        with zipfile.ZipFile(wheel) as archive:
            [record] = [name for name in archive.namelist() if name.endswith("/RECORD")]
            lines = archive.read(record).decode().splitlines()
        assert sorted(line.rsplit(",", 2)[0] for line in lines) == sorted(names(wheel))


def test_a_second_build_takes_them_from_the_cache(kept, compiled, monkeypatch):
    def compiled_again(*_args, **_kwargs):
        pytest.fail("compiled although nothing changed")

    monkeypatch.setattr(tools, "run", compiled_again)
    assert wheels.compiled(kept) == compiled


def test_equal_contents_give_equal_bytes(compiled, tmp_path):
    again = wheels.compiled(tmp_path)
    assert [wheel.read_bytes() for wheel in again] == [wheel.read_bytes() for wheel in compiled]


def test_a_changed_calculator_gets_another_place_in_the_cache(tmp_path, monkeypatch):
    source = tmp_path / "calculators"
    source.mkdir()
    module = source / "torque.py"
    module.write_text("FACTOR = 1", encoding="utf-8")
    dist = next(iter(distributions.needed().values()))
    monkeypatch.setattr(distributions, "source_folder", lambda _: source)
    before = distributions.fingerprint(dist, "recipe")
    module.write_text("FACTOR = 2", encoding="utf-8")
    assert distributions.fingerprint(dist, "recipe") != before
    assert distributions.fingerprint(dist, "another recipe") != distributions.fingerprint(
        dist, "recipe"
    )


def test_wheels_no_longer_used_are_dropped_but_the_newest(compiled, tmp_path):
    used = [shutil.copytree(wheel.parent, tmp_path / wheel.parent.name) for wheel in compiled]
    for age in range(12):
        old = tmp_path / f"old-{age:02}"
        old.mkdir()
        os.utime(old, (1000 - age, 1000 - age))
    assert [wheel.parent for wheel in wheels.compiled(tmp_path)] == used
    left = sorted(folder.name for folder in tmp_path.glob("old-*"))
    assert left == [f"old-{age:02}" for age in range(8)]
    assert all(list(folder.glob("*.whl")) for folder in used)
