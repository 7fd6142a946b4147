"""The memory image of the calculators: made once, kept, proven before it is kept."""

from __future__ import annotations

import gzip
import os

import pytest

from underhoist.browser import BrowserError, snapshot, tools, wheels


@pytest.fixture(scope="module")
def modules(tmp_path_factory):
    return tools.node_modules(tmp_path_factory.mktemp("site"))


@pytest.fixture(scope="module")
def ready(tmp_path_factory, modules):
    """Cache, wheels and image of one build."""
    cache = tmp_path_factory.mktemp("cache")
    compiled = wheels.compiled(cache / "wheels")
    return cache, compiled, snapshot.snapshot(cache, modules / "pyodide", compiled)


def test_the_image_is_compressed_memory_of_this_runtime(ready):
    _, _, image = ready
    content = gzip.decompress(image.read_bytes())
    assert content[:4] == b"\0snp"  # How Pyodide marks its images.
    assert 20_000_000 < len(content) < 40_000_000
    assert image.stat().st_size < 10_000_000


def test_a_second_build_takes_it_from_the_cache(ready, modules, monkeypatch):
    cache, compiled, image = ready
    monkeypatch.setattr(tools, "run", lambda *_, **__: pytest.fail("taken although kept"))
    assert snapshot.snapshot(cache, modules / "pyodide", compiled) == image


def test_other_wheels_want_another_image(ready, modules, monkeypatch):
    cache, compiled, image = ready
    taken = []

    def take(_what, command):
        taken.append(command)
        with open(command[3], "wb") as out:  # noqa: PTH123
            out.write(b"another")

    monkeypatch.setattr(tools, "run", take)
    other = snapshot.snapshot(cache, modules / "pyodide", compiled[1:])
    assert other != image
    assert len(taken) == 1
    other.unlink()


def test_only_the_newest_images_are_kept(tmp_path):
    for age in range(5):
        image = tmp_path / f"{age}.bin"
        image.touch()
        os.utime(image, (1000 - age, 1000 - age))
    snapshot._drop_older(tmp_path)
    assert sorted(file.name for file in tmp_path.iterdir()) == ["0.bin", "1.bin", "2.bin"]


def test_calculators_that_cannot_be_imported_stop_the_build(tmp_path, modules, ready):
    _, compiled, _ = ready
    without_pint = [wheel for wheel in compiled if not wheel.name.startswith("pint-")]
    with pytest.raises(BrowserError) as raised:
        snapshot.snapshot(tmp_path, modules / "pyodide", without_pint)
    said = str(raised.value)
    assert said.startswith("Taking the image of the calculators did not work.\n")
    assert "No module named 'pint'" in said
    assert list(tmp_path.glob("*.bin")) == []
