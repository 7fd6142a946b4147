"""The pages' scripts in few files: nothing lost, few requests, made once, written beside."""

import os
import re
from pathlib import Path

import pytest

from underhoist import theme
from underhoist.browser import tools
from underhoist.browser.scripts import write_scripts

ASSETS = theme.folder() / "assets"
MODULES = tools.node_modules(ASSETS)
EXPORTED = re.compile(r"^export (?:async )?(?:function\*?|class|const|let) (\w+)", re.MULTILINE)
HANDED_ON = re.compile(r"^export \{([^}]*)\}", re.MULTILINE)
IMPORTED = re.compile(r"^(?:import|export)\b[^;]*?['\"](\.[^'\"]+)['\"];", re.MULTILINE)
LATER_ONLY = {"types.js"}
"""Modules of which nothing is left but types."""


@pytest.fixture(scope="module")
def cache(tmp_path_factory) -> Path:
    return tmp_path_factory.mktemp("cache")


@pytest.fixture(scope="module")
def assets(tmp_path_factory, cache) -> Path:
    """What a site's `assets` come to."""
    site = tmp_path_factory.mktemp("site")
    write_scripts(site, MODULES, cache)
    return site / "assets"


def sources() -> list[str]:
    """Our modules by their address, without those that are no modules of a page."""
    files = (file.relative_to(ASSETS).as_posix() for file in ASSETS.rglob("*.js"))
    return sorted(each for each in files if not each.startswith(("look/", "pack/", "preview/")))


def names(file: Path) -> set[str]:
    """What a file gives to others."""
    text = file.read_text(encoding="utf-8")
    given = [
        each.split(" as ")[-1].strip()
        for all_ in HANDED_ON.findall(text)
        for each in all_.split(",")
    ]
    return {*EXPORTED.findall(text), *given} - {""}


def asked_for(assets: Path, entry: str) -> set[str]:
    """All files that have to be there before one runs."""
    found = {entry}
    waiting = [entry]
    while waiting:
        file = assets / waiting.pop()
        for each in IMPORTED.findall(file.read_text(encoding="utf-8")):
            other = (file.parent / each).resolve().relative_to(assets.resolve()).as_posix()
            if other not in found:
                found.add(other)
                waiting.append(other)
    return found


def test_each_module_gives_at_its_own_address_what_it_gave(assets: Path) -> None:
    wanting = {
        each: names(ASSETS / each) - names(assets / each)
        for each in sources()
        if each.rpartition("/")[2] not in LATER_ONLY and (assets / each).exists()
    }
    assert len(wanting) > 150
    assert {each: lost for each, lost in wanting.items() if lost} == {}


def test_no_module_that_anything_asks_for_is_missing(assets: Path) -> None:
    used = {each for each in sources() if names(ASSETS / each)} - {
        "fault/types.js",
        "cards/types.js",
    }
    assert [each for each in used if not (assets / each).exists()] == []


@pytest.mark.parametrize(
    ("entry", "most"),
    [("phone/start.js", 1), ("phone/calculator.js", 2), ("fault/start.js", 3),
     ("cards/start.js", 4), ("drafting/start.js", 4), ("cards/steps/work-view.js", 6),
     ("phone/calculator-worker.js", 1), ("phone/keeper-worker.js", 1),
     ("drafting/desk-worker.js", 1), ("search/worker.js", 2)],
)  # fmt: skip
def test_a_page_asks_for_few_files(assets: Path, entry: str, most: int) -> None:
    assert len(asked_for(assets, entry)) <= most


@pytest.mark.parametrize("shared", ["phone/start.js", "cards/shared.js", "cards/frame.js"])
def test_nothing_waits_at_the_top_of_what_others_wait_for(assets: Path, shared: str) -> None:
    """A page's part would not start before the manual is stored."""
    assert not re.search(r"^(?:\w.*= )?await\b", (assets / shared).read_text(), re.MULTILINE)


def test_the_same_modules_are_put_together_once(tmp_path, assets, cache, monkeypatch) -> None:
    monkeypatch.setattr(tools, "run", lambda *_, **__: pytest.fail("it was made anew"))
    write_scripts(tmp_path, MODULES, cache)
    made = {
        file.relative_to(tmp_path / "assets"): file.read_bytes() for file in tmp_path.rglob("*.js")
    }
    assert made == {file.relative_to(assets): file.read_bytes() for file in assets.rglob("*.js")}


def test_a_file_that_an_older_site_shares_is_not_written_to(tmp_path, assets, cache) -> None:
    del assets
    older = tmp_path / "older.js"
    older.write_text("as it was")
    place = tmp_path / "site" / "assets" / "phone" / "start.js"
    place.parent.mkdir(parents=True)
    os.link(older, place)
    vendor = tmp_path / "site" / "assets" / "vendor" / "idb.js"
    vendor.parent.mkdir()
    os.link(older, vendor)
    write_scripts(tmp_path / "site", MODULES, cache)
    assert older.read_text() == "as it was"
    assert "as it was" not in place.read_text() + vendor.read_text()
