"""Large files and the list of all files in parts, so that an update fetches only what changed."""

from __future__ import annotations

import gzip
import json
import random

import pytest

from underhoist.browser.hashes import sha
from underhoist.browser.parts import LARGE, cut
from underhoist.browser.precache import write_service_worker

WORDS = random.Random(7)  # noqa: S311 - drawn alike at every run


def a_text(words=60_000):
    return ",".join(f"{WORDS.randrange(10**6)} turns" for _ in range(words)).encode()


TEXT = a_text()


@pytest.mark.parametrize(
    "content", [b"", b"x", b",", b",\n" * 200_000, b"x" * 400_000, TEXT, bytes(300_000)]
)
def test_the_parts_joined_are_the_text(content):
    parts = list(cut(content))
    assert b"".join(parts) == content
    assert all(0 < len(part) <= 128_000 for part in parts)


@pytest.mark.parametrize("at", [0, len(TEXT) // 2, len(TEXT)])
def test_a_word_put_in_changes_two_parts_at_most(at):
    before = set(cut(TEXT))
    after = list(cut(TEXT[:at] + b"slowly, " + TEXT[at:]))
    assert len(before) > 20
    assert len([part for part in after if part not in before]) <= 2


def test_a_large_file_stands_in_the_site_in_parts_and_alone_in_its_bundle(site):
    (site / "large.json").write_bytes(TEXT)
    assert len(TEXT) > LARGE
    write_service_worker(site)
    bundles = json.loads((site / "offline" / "files.json").read_text(encoding="utf-8"))["bundles"]
    [large] = [bundle for bundle in bundles if "parts" in bundle]
    assert [path for path, _, _ in large["files"]] == ["large.json"]
    parts = [part_of(site, hashed) for _, hashed in large["parts"]]
    assert b"".join(parts) == TEXT
    assert [[len(part), sha(part)] for part in parts] == large["parts"]


def test_the_list_is_put_together_from_its_lines(site):
    write_service_worker(site)
    lines = json.loads((site / "offline" / "lines.json").read_text(encoding="utf-8"))
    listed = b"".join(part_of(site, hashed) for hashed in lines)
    assert listed == (site / "offline" / "files.json").read_bytes()


def test_a_page_that_grows_leaves_the_other_bundles_as_they_were(site):
    for number in range(600):
        page = site / "pages" / f"{number:03}" / "index.html"
        page.parent.mkdir(parents=True)
        page.write_text(f"<h1>{number}</h1>" + "Turn it back. " * 700, encoding="utf-8")
    before = bundles_of(site)
    page = site / "pages" / "000" / "index.html"
    page.write_text(page.read_text(encoding="utf-8") + "Slowly. " * 9_000, encoding="utf-8")
    after = bundles_of(site)
    assert len(after) >= 4
    assert len(after - before) <= 2


def bundles_of(site):
    write_service_worker(site)
    return {file.name for file in (site / "offline" / "bundles").iterdir()}


def part_of(site, hashed):
    return gzip.decompress((site / "offline" / "parts" / f"{hashed[:12]}.bin").read_bytes())


def test_what_was_packed_is_kept_and_gives_the_same_site(site, tmp_path):
    (site / "large.json").write_bytes(TEXT)
    write_service_worker(site)
    without = {file.name: file.read_bytes() for file in (site / "offline").rglob("*.bin")}
    for _ in range(2):
        write_service_worker(site, tmp_path / "packed")
        kept = {file.name: file.read_bytes() for file in (site / "offline").rglob("*.bin")}
        assert kept == without
    assert len(list((tmp_path / "packed").iterdir())) >= 20
