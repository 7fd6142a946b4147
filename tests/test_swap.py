"""Wherever the swap of two sites stops, the next build finds one whole site and tidies the rest."""

import os
import shutil

import pytest

from underhoist.project import Unusable
from underhoist.swap import MARK, fresh, mark, swap

PAGES = ("index.html", "jobs/index.html", "tools/hoist/index.html")


class KilledError(BaseException):
    """What ends the process: nothing catches it."""


def write(folder, words):
    for page in PAGES:
        (folder / page).parent.mkdir(parents=True, exist_ok=True)
        (folder / page).write_text(words, encoding="utf-8")
    mark(folder)


def build(site, words):
    write(fresh(site), words)
    swap(site)


def said(site):
    return {(site / page).read_text(encoding="utf-8") for page in PAGES}


@pytest.fixture
def site(tmp_path):
    site = tmp_path / "site"
    build(site, "old")
    return site


def kill_at(number, monkeypatch):
    """End the process at this change of the disk, counted from 0."""
    done = iter(range(1000))

    def counted(change):
        def changed(*given, **how):
            if next(done) == number:
                raise KilledError
            return change(*given, **how)

        return changed

    for name in ("rename", "unlink", "rmdir"):
        monkeypatch.setattr(os, name, counted(getattr(os, name)))


def test_a_build_goes_on_wherever_the_one_before_was_killed(site, monkeypatch):
    number = 0
    while True:
        write(fresh(site), f"new {number}")
        with monkeypatch.context() as patch:
            kill_at(number, patch)
            try:
                swap(site)
            except KilledError:
                pass
            else:
                break
        shutil.rmtree(fresh(site))
        assert len(said(site)) == 1, "no whole site is there"
        assert [path.name for path in site.parent.iterdir()] == ["site"]
        number += 1
    assert number >= len(PAGES) + 4, "two names changed, and each page, folder and mark was deleted"
    assert said(site) == {f"new {number}"}


def test_the_mark_goes_last(site, monkeypatch):
    write(fresh(site), "new")
    gone = []
    unlink = os.unlink
    monkeypatch.setattr(
        os, "unlink", lambda path, **how: (gone.append(os.fspath(path)), unlink(path, **how))
    )
    swap(site)
    assert len(gone) == len(PAGES) + 1
    assert gone[-1].endswith(MARK)


def test_the_old_site_is_kept_where_it_is_asked_for(site, tmp_path):
    write(fresh(site), "new")
    swap(site, tmp_path / "kept")
    assert (said(site), said(tmp_path / "kept")) == ({"new"}, {"old"})


def test_an_old_site_that_cannot_be_kept_is_put_away(site, tmp_path):
    write(fresh(site), "new")
    swap(site, tmp_path / "no such folder" / "kept")
    assert said(site) == {"new"}
    assert [path.name for path in site.parent.iterdir()] == ["site"]


def test_a_folder_of_somebody_elses_is_left_alone(site):
    other = site.with_name("site.underhoist-old")
    other.mkdir()
    (other / "letter.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(Unusable, match="in the way of the build"):
        fresh(site)
    assert (other / "letter.txt").read_text(encoding="utf-8") == "mine"
