"""The memory image of the calculators: made once, kept, proven before it is kept."""

from __future__ import annotations

import gzip
import os
import shutil
import struct
from pathlib import Path

import pytest

from underhoist.browser import BrowserError, snapshot, tools, wheels


@pytest.fixture(scope="module")
def modules(tmp_path_factory):
    return tools.node_modules(tmp_path_factory.mktemp("site"))


@pytest.fixture(scope="module")
def ready(cache, modules):
    """Cache, wheels and image of one build."""
    compiled = wheels.compiled(cache / "wheels")
    images = cache / "images"
    return images, compiled, snapshot.snapshot(images, modules / "pyodide", compiled)


PHONE = Path(snapshot.__file__).parents[3] / "site_overrides" / "assets" / "phone"

# A memory of full, empty and half pages packed by the build and put back by the phone.
THERE_AND_BACK = """
const [sparse, whole] = process.argv.slice(1);
const { sparse: pack } = await import(sparse);
const { wholeImage } = await import(whole);
const memory = new Uint8Array(10 * 4096 + 100);
for (const at of [0, 4095, 3 * 4096, 5 * 4096 - 1, 10 * 4096 + 99]) memory[at] = 1 + (at % 250);
const bytes = (buffer) => Uint8Array.from(buffer).buffer;
const packed = pack(memory);
const back = wholeImage(bytes(packed));
if (Buffer.compare(Buffer.from(back), Buffer.from(memory))) throw new Error("not the same");
const refused = (buffer) => {
  try { wholeImage(bytes(buffer)); } catch (error) { return error.name; }
};
const damaged = [packed.subarray(0, -1), Buffer.concat([packed, packed]), packed.subarray(0, 4)];
console.log(packed.length, back.length, ...damaged.map(refused));
"""


def test_the_image_is_compressed_memory_of_this_runtime(ready):
    _, _, image = ready
    content = gzip.decompress(image.read_bytes())
    length, runs = struct.unpack_from("<II", content)
    assert content[8 + 8 * runs :][:4] == b"\0snp"  # How Pyodide marks its images.
    assert len(content) < 0.75 * length
    assert 20_000_000 < length < snapshot.LARGEST
    assert image.stat().st_size < 10_000_000


def test_an_image_made_elsewhere_and_later_is_the_same(tmp_path, modules, ready, monkeypatch):
    _, compiled, image = ready
    elsewhere = [Path(shutil.copy(wheel, tmp_path)) for wheel in compiled]
    for name, value in {"TZ": "Asia/Tokyo", "LANG": "de_DE.UTF-8", "HOME": "/nowhere"}.items():
        monkeypatch.setenv(name, value)
    again = snapshot.snapshot(tmp_path / "cache", modules / "pyodide", elsewhere)
    assert again != image
    assert gzip.decompress(again.read_bytes()) == gzip.decompress(image.read_bytes())


def test_empty_pages_are_left_out_and_put_back_by_the_phone():
    module = Path(snapshot.__file__).with_name("sparse.mjs")
    files = [file.as_uri() for file in (module, PHONE / "sparse-image.js")]
    command = [tools.node(), "--input-type=module", "-e", THERE_AND_BACK, *files]
    packed, whole, *errors = tools.run("Packing", command).split()
    head = 8 + 3 * 8
    assert int(packed) == head + 3 * 4096 + 100  # Pages 0, 3, 4 and the rest at the end.
    assert int(whole) == 10 * 4096 + 100
    assert errors == ["RangeError"] * 3


def test_memory_over_the_limit_stops_the_build(tmp_path, modules, ready):
    _, compiled, _ = ready
    with pytest.raises(BrowserError) as raised:
        snapshot.snapshot(tmp_path, modules / "pyodide", compiled, largest=20_000_000)
    said = str(raised.value)
    assert said.startswith(
        "Taking the image of the calculators did not work.\nThe calculators take "
    )
    assert said.endswith(" MB of memory; a phone restores 20.0 MB quickly. Import less in them.")
    assert list(tmp_path.glob("*.bin")) == []


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
