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
from underhoist.rebuild.state import Memory, State

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
    for place in (folder / "site").rglob("*"):
        assert place.is_file() or any(place.iterdir()), f"{place} is left over"
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
def project(first, tmp_path, monkeypatch):
    """The project with what was kept of its build."""
    monkeypatch.setattr(store, "place_of", lambda project, site: project / "kept")
    shutil.copytree(first.parent / "data", tmp_path / "data")
    return shutil.copytree(first, tmp_path / "with")


@pytest.fixture
def two(first, project, tmp_path):
    """The project twice: with what was kept of its build, and without."""
    return project, without_kept(first, tmp_path / "without")


@pytest.fixture(scope="module")
def whole(first, tmp_path_factory):
    """What a whole build gives after an edit: made once for all tests that ask for that edit."""
    made = {}

    def of(edit):
        if edit not in made:
            folder = without_kept(first, tmp_path_factory.mktemp("whole") / "project")
            edit(folder)
            done = built(folder)
            assert done.taken_over == 0
            made[edit] = done.made_anew, held(folder)
        return made[edit]

    return of


def without_kept(first, folder):
    shutil.copytree(first, folder)
    (folder / "kept").unlink()
    return folder


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
def test_an_edit_gives_what_a_whole_build_gives(project, whole, edit):
    edit(project)
    some = built(project)
    made_by_whole, wanted = whole(edit)
    assert some.site is not None
    assert some.taken_over + some.made_anew == made_by_whole
    assert (some.taken_over > 0) == (edit is not settings)
    assert held(project) == wanted


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


def test_older_sites_files_are_never_written_into(project, tmp_path):
    before = {}
    for number, edit in enumerate((text, title, torque, nothing)):
        aside = tmp_path / f"aside-{number}"
        shutil.copytree(project / "site", aside, copy_function=os.link)
        before |= {path: path.read_bytes() for path in aside.rglob("*") if path.is_file()}
        edit(project)
        built(project)
        linked = [path for path in before if aside in path.parents and path.stat().st_nlink > 1]
        assert len(linked) > 100, "nothing was linked"
    assert {path: path.read_bytes() for path in before} == before


def test_a_site_stands_in_the_folders_of_the_one_before_the_last(project):
    folders = []
    for edit in (nothing, text, title, torque):
        edit(project)
        built(project)
        folders.append((project / "site/jobs/raise").stat().st_ino)
    assert folders[0] == folders[2] != folders[1] == folders[3]


def test_a_whole_build_keeps_no_older_site(project):
    for _ in range(2):
        built(project)
    assert (project / "kept.spare").is_dir()
    built(project, afresh=True)
    assert not (project / "kept.spare").exists()


@pytest.mark.parametrize("into", ["jobs/raise", "jobs/raise/index.html"])
def test_an_older_site_in_which_something_is_in_the_way_is_not_used(two, into):
    for _ in range(2):
        built(two[0])
    place = two[0] / "kept.spare" / into
    if place.is_dir():
        shutil.rmtree(place)
        place.write_text("a file where a folder was", encoding="utf-8")
    else:
        place.unlink()
        (place / "folder where a file was").mkdir(parents=True)
    text(two[0])
    text(two[1])
    assert built(two[0]).taken_over == 0
    built(two[1])
    assert held(two[0]) == held(two[1])


def test_a_disk_without_links_gets_copies(project, whole, monkeypatch):
    def no_links(*_):
        raise OSError(errno.EPERM, "no links here")

    monkeypatch.setattr(old_site.os, "link", no_links)
    text(project)
    assert built(project).taken_over
    assert held(project) == whole(text)[1]


def test_a_script_that_was_changed_in_the_old_site_is_made_anew(project, whole):
    (project / "site/assets/look/paper.js").write_text("// by hand", encoding="utf-8")
    assert built(project).site is not None
    assert held(project) == whole(nothing)[1]


def test_the_list_for_the_web_follows(project, tmp_path):
    place = "site_url: https://manual.example/\n"
    (project / "mkdocs.yml").write_text(SETTINGS + place, encoding="utf-8")
    built(project)
    one_more(project)
    other = shutil.copytree(project, tmp_path / "without")
    assert built(project).taken_over
    assert built(other, afresh=True).taken_over == 0
    listed = gzip.decompress((project / "site/sitemap.xml.gz").read_bytes())
    assert b"https://manual.example/jobs/second/" in listed
    assert held(project) == held(other)


def test_afresh_takes_nothing_over(project):
    assert built(project, afresh=True).taken_over == 0
    assert built(project).made_anew == 0


def test_a_page_that_was_changed_in_the_old_site_is_written_anew(project, whole):
    (project / "site/jobs/set-band/index.html").write_text("<p>Changed by hand.</p>")
    (project / "site/jobs/raise/index.html").unlink()
    assert built(project).made_anew == 2
    assert held(project) == whole(nothing)[1]


def test_what_is_damaged_is_made_anew(project):
    damage(project / "kept", 40)
    assert built(project).taken_over == 0
    assert built(project).made_anew == 0


def damage(place, at):
    data = bytearray(place.read_bytes())
    data[at] ^= 1
    place.write_bytes(data)


@pytest.mark.parametrize("at", [0, 31, 32, 40, 1_000, -1])
def test_a_damaged_byte_anywhere_is_as_if_nothing_was_kept(project, at):
    assert taken(project) != State()
    damage(project / "kept", at)
    assert taken(project) == State()


@pytest.mark.parametrize("length", [0, 20, 32, 1_000, -1])
def test_what_is_cut_off_is_as_if_nothing_was_kept(project, length):
    place = project / "kept"
    place.write_bytes(place.read_bytes()[:length])
    assert taken(project) == State()


def taken(project):
    """What a build of the project would take as kept; what comes of it a damaged build shows."""
    return Memory(project, project / "site").load()


def parts(folder):
    return sorted((folder / "kept.parts").iterdir())


def test_a_damaged_part_makes_all_anew(project, whole):
    text(project)
    for part in parts(project):
        part.write_bytes(part.read_bytes()[:-1])
    assert built(project).taken_over == 0
    assert held(project) == whole(text)[1]
    assert built(project).made_anew == 0


def test_a_lost_part_makes_all_anew(project):
    for part in parts(project):
        part.unlink()
    assert built(project).taken_over == 0
    assert built(project).made_anew == 0


def test_parts_that_nobody_needs_any_more_are_dropped(project):
    before = parts(project)
    text(project)
    built(project)
    after = parts(project)
    assert len(after) == len(before)
    assert 0 < len({*before} - {*after}) < len(before) / 2


def test_what_somebody_else_kept_is_never_opened(project, tmp_path, monkeypatch):
    (tmp_path / "data" / store.KEY).write_bytes(SECRET)
    monkeypatch.setattr(store.pickle, "loads", lambda body: pytest.fail("it was opened"))
    assert built(project).taken_over == 0


def test_another_version_takes_nothing_over(project, monkeypatch):
    monkeypatch.setattr(builder, "builder", lambda: "a newer one")
    assert built(project).taken_over == 0


def test_a_build_that_cannot_keep_anything_builds_all_the_same(project, monkeypatch):
    monkeypatch.setattr(store, "place_of", lambda project, site: project / "mkdocs.yml" / "kept")
    assert built(project).site is not None
    assert (project / "mkdocs.yml").read_text(encoding="utf-8") == SETTINGS
