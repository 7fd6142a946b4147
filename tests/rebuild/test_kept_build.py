"""A build that takes pages over gives, to the byte, what a build that makes all of them gives."""

import errno
import gzip
import os
import random
import re
import shutil
from pathlib import Path

import pytest

from underhoist.build import build
from underhoist.rebuild import builder, old_site, store

MANUAL = Path(__file__).parents[1] / "pages" / "manual"
SETTINGS = "site_name: Small\ndocs_dir: pages\ntheme: {name: material}\nplugins: [underhoist]\n"
SECRET = b"as long as a secret has to be..."
PAGE = "jobs/set-band.md"


class Silent:
    def stage(self, words, steps=None):
        """Say nothing."""

    def step(self):
        """Say nothing."""


def built(folder, **how):
    """Build the pages alone: the phone's side is made anew in any case."""
    return build(folder, folder / "site", Silent(), lambda site, tell: None, **how)


def held(folder):
    files = (path for path in (folder / "site").rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in files}


def replace(folder, file, old, new):
    path = folder / "pages" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


@pytest.fixture(autouse=True)
def own_data(tmp_path, monkeypatch):
    """A secret of the test's own, and a builder that nobody edits meanwhile."""
    monkeypatch.setattr(store, "user_data_path", lambda *_, **__: tmp_path / "data")
    monkeypatch.setattr(builder, "builder", lambda: "this one")


@pytest.fixture(scope="module")
def first(tmp_path_factory):
    """A project that was built once, and its site; nobody changes it."""
    folder = tmp_path_factory.mktemp("first") / "project"
    shutil.copytree(MANUAL, folder / "pages")
    (folder / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    data = folder.parent / "data"
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(store, "user_data_path", lambda *_, **__: data)
        patch.setattr(builder, "builder", lambda: "this one")
        patch.setattr(store, "place_of", lambda project, site: project / "kept")
        built(folder)
    return folder


@pytest.fixture
def two(first, tmp_path, monkeypatch):
    """The project twice: with what was kept of its build, and without."""
    monkeypatch.setattr(store, "place_of", lambda project, site: project / "kept")
    shutil.copytree(first.parent / "data", tmp_path / "data")
    folders = tmp_path / "with", tmp_path / "without"
    for folder in folders:
        shutil.copytree(first, folder)
    (folders[1] / "kept").unlink()
    return folders


def text(folder):
    replace(folder, PAGE, "Wipe the case.", "Polish the case.")


def torque(folder):
    replace(folder, "families/wren-2.md", "torque: 120 lbf*in", "torque: 118 lbf*in")


def title(folder):
    replace(folder, PAGE, "title: Set the band", "title: Adjust the band")


def word(folder):
    replace(folder, "tools/inch-wrench.md", "title: ", "title: Small ")


def drawing(folder):
    replace(folder, "drawings/adjuster.svg", 'viewBox="0 0 ', 'viewBox="0 0 1')


def settings(folder):
    (folder / "mkdocs.yml").write_text(SETTINGS.replace("Small", "Large"), encoding="utf-8")


def one_more(folder):
    page = folder / "pages/jobs/second.md"
    shutil.copy(folder / "pages" / PAGE, page)
    replace(folder, "jobs/second.md", "title: Set the band", "title: Set the second band")


def fewer(folder):
    (folder / "pages/jobs/second.md").unlink()


def words(folder):
    declared = "words: {shim: {also: [spacer]}}"
    replace(folder, "index.md", "title: A small manual", f"title: A small manual\n{declared}")


def nothing(folder):
    """Leave all as it is."""


EDITS = [nothing, text, torque, title, word, words, drawing, settings, one_more]


@pytest.mark.parametrize("edit", EDITS, ids=lambda edit: edit.__name__)
def test_an_edit_gives_what_a_whole_build_gives(two, edit):
    for folder in two:
        edit(folder)
    some, all_ = built(two[0]), built(two[1])
    assert (some.site is not None, all_.taken_over) == (True, 0)
    assert some.taken_over + some.made_anew == all_.made_anew
    assert (some.taken_over > 0) == (edit is not settings)
    assert held(two[0]) == held(two[1])


def test_edits_one_after_the_other(two):
    for edit in (one_more, text, fewer):
        for folder in two:
            edit(folder)
        assert built(two[0]).taken_over
        assert built(two[1], afresh=True).taken_over == 0
        assert held(two[0]) == held(two[1])


SAID = re.compile(r"(?<=[a-z] )[a-z]{4,}(?= [a-z]+[ .,])")
"""Words that stand in the middle of a sentence."""


def edit_any(folder, seed):
    """Change something in a page, drawn by the seed: a word, a number, a line, the whole page."""
    chance = random.Random(seed)  # noqa: S311 - drawn alike at every run
    path = chance.choice(sorted((folder / "pages").rglob("*.md")))
    text = path.read_text(encoding="utf-8")
    places = list(SAID.finditer(text))
    place = chance.choice(places) if places else None
    match chance.randrange(4):
        case 0 if place:
            text = f"{text[: place.start()]}slowly{text[place.end() :]}"
        case 1:
            text = text.replace("title: ", f"title: Number {seed} ", 1)
        case 2:
            text += f"\nLook {seed} times at [the band](/jobs/set-band.md).\n"
        case _:
            copy = path.with_name(f"more-{seed}.md")
            copy.write_text(text.replace("title: ", f"title: Again {seed} "), encoding="utf-8")
    path.write_text(text, encoding="utf-8")


@pytest.mark.parametrize("seed", range(2))
def test_any_edits_give_what_a_whole_build_gives(two, seed):
    for number in range(3):
        for folder in two:
            edit_any(folder, 10 * seed + number)
        some, all_ = built(two[0]), built(two[1], afresh=True)
        assert (some.site is None) == (all_.site is None)
        assert held(two[0]) == held(two[1])


def test_the_old_sites_files_are_never_written_into(two, tmp_path):
    site, aside = two[0] / "site", tmp_path / "aside"
    shutil.copytree(site, aside, copy_function=os.link)
    before = {path: path.read_bytes() for path in aside.rglob("*") if path.is_file()}
    for edit in (text, title, torque):
        edit(two[0])
    built(two[0])
    linked = [path for path in before if path.stat().st_nlink > 1]
    assert len(linked) > 100, "nothing was linked"
    assert {path: path.read_bytes() for path in before} == before


def test_a_disk_without_links_gets_copies(two, monkeypatch):
    def no_links(*_):
        raise OSError(errno.EPERM, "no links here")

    monkeypatch.setattr(old_site.os, "link", no_links)
    for folder in two:
        text(folder)
    assert built(two[0]).taken_over
    built(two[1])
    assert held(two[0]) == held(two[1])


def test_a_script_that_was_changed_in_the_old_site_is_made_anew(two):
    (two[0] / "site/assets/look/paper.js").write_text("// by hand", encoding="utf-8")
    assert built(two[0]).site is not None
    built(two[1])
    assert held(two[0]) == held(two[1])


def test_the_list_for_the_web_follows(two):
    for folder in two:
        place = "site_url: https://manual.example/\n"
        (folder / "mkdocs.yml").write_text(SETTINGS + place, encoding="utf-8")
        built(folder)
        one_more(folder)
    assert built(two[0]).taken_over
    built(two[1], afresh=True)
    listed = gzip.decompress((two[0] / "site/sitemap.xml.gz").read_bytes())
    assert b"https://manual.example/jobs/second/" in listed
    first, other = (held(folder) for folder in two)
    assert first == other


def test_afresh_takes_nothing_over(two):
    assert built(two[0], afresh=True).taken_over == 0
    assert built(two[0]).made_anew == 0


def test_a_page_that_was_changed_in_the_old_site_is_written_anew(two):
    (two[0] / "site/jobs/set-band/index.html").write_text("<p>Changed by hand.</p>")
    (two[0] / "site/jobs/raise/index.html").unlink()
    assert built(two[0]).made_anew == 2
    built(two[1])
    assert held(two[0]) == held(two[1])


@pytest.mark.parametrize("at", [0, 40, -1])
def test_what_is_damaged_is_made_anew(two, at):
    place = two[0] / "kept"
    data = bytearray(place.read_bytes())
    data[at] ^= 1
    place.write_bytes(data)
    assert built(two[0]).taken_over == 0
    assert built(two[0]).made_anew == 0


def test_what_is_cut_off_is_made_anew(two):
    place = two[0] / "kept"
    place.write_bytes(place.read_bytes()[:20])
    assert built(two[0]).taken_over == 0


def parts(folder):
    return sorted((folder / "kept.parts").iterdir())


def test_a_damaged_part_makes_all_anew(two):
    for folder in two:
        text(folder)
    for part in parts(two[0]):
        part.write_bytes(part.read_bytes()[:-1])
    assert built(two[0]).taken_over == 0
    built(two[1])
    assert held(two[0]) == held(two[1])
    assert built(two[0]).made_anew == 0


def test_a_lost_part_makes_all_anew(two):
    for part in parts(two[0]):
        part.unlink()
    assert built(two[0]).taken_over == 0
    assert built(two[0]).made_anew == 0


def test_parts_that_nobody_needs_any_more_are_dropped(two):
    before = parts(two[0])
    text(two[0])
    built(two[0])
    after = parts(two[0])
    assert len(after) == len(before)
    assert 0 < len({*before} - {*after}) < len(before) / 2


def test_what_somebody_else_kept_is_never_opened(two, tmp_path, monkeypatch):
    (tmp_path / "data" / store.KEY).write_bytes(SECRET)
    monkeypatch.setattr(store.pickle, "loads", lambda body: pytest.fail("it was opened"))
    assert built(two[0]).taken_over == 0


def test_another_version_takes_nothing_over(two, monkeypatch):
    monkeypatch.setattr(builder, "builder", lambda: "a newer one")
    assert built(two[0]).taken_over == 0


def test_a_build_that_cannot_keep_anything_builds_all_the_same(two, monkeypatch):
    monkeypatch.setattr(store, "place_of", lambda project, site: project / "mkdocs.yml" / "kept")
    assert built(two[0]).site is not None
    assert (two[0] / "mkdocs.yml").read_text(encoding="utf-8") == SETTINGS
