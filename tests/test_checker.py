"""The check that is kept: what it reads again, and that it finds what a new one finds."""

import os
import shutil
from pathlib import Path

import pytest

from underhoist import checker as checking
from underhoist.check import FolderChecker, check
from underhoist.checker import Checker
from underhoist.project import Unusable

SMALLEST = Path(__file__).parent / "good" / "smallest"
TOOL = "---\nkind: tool\ntitle: Lamp\nsummary: Light.\n---\n"


@pytest.fixture
def files():
    paths = (path for path in sorted(SMALLEST.rglob("*")) if path.is_file())
    return {path.relative_to(SMALLEST).as_posix(): path.read_bytes() for path in paths}


@pytest.fixture
def folder(tmp_path):
    return Path(shutil.copytree(SMALLEST, tmp_path / "manual"))


@pytest.fixture
def read_again(monkeypatch):
    """The files that are read from now on."""
    names: list[str] = []
    read = checking.read

    def noted(file: str, data: bytes):
        names.append(file)
        return read(file, data)

    monkeypatch.setattr(checking, "read", noted)
    return names


def codes(checker: Checker):
    """The codes of what is found; nobody needs a lamp that a test puts in."""
    return [each.code for each in checker.checked().findings if each.code != "orphan"]


def test_it_finds_what_the_check_of_the_folder_finds(files):
    assert Checker(files).checked() == check(SMALLEST)


def test_text_and_bytes_are_the_same(files, read_again):
    checker = Checker(files)
    read_again.clear()
    assert not checker.put("index.md", files["index.md"].decode())
    assert read_again == []


def test_only_a_changed_page_is_read_again(files, read_again):
    checker = Checker(files, ["drawings/pan.svg"])
    read_again.clear()
    assert checker.put("tools/lamp.md", TOOL)
    assert not checker.put("tools/lamp.md", TOOL)
    assert read_again == ["tools/lamp.md"]
    manual = checker.checked().manual
    assert manual.tools["lamp"].title.value == "Lamp"
    assert {"tools/lamp.md", "drawings/pan.svg"} <= manual.files


def test_a_fault_comes_and_goes(files):
    checker = Checker(files)
    checker.put("tools/lamp.md", TOOL.replace("title:", "titel:"))
    assert codes(checker) == ["unknown-key"]
    checker.put("tools/lamp.md", TOOL)
    assert codes(checker) == []


def test_a_page_taken_out_is_missed_where_it_is_named(files):
    checker = Checker(files)
    checker.put("tools/lamp.md", TOOL)
    checker.put("lost.md", "---\nkind: page\ntitle: t\nsummary: s\n---\n<tool:lamp>\n")
    assert codes(checker) == []
    checker.remove("tools/lamp.md")
    checker.remove("tools/lamp.md")
    assert codes(checker) == ["dead-reference"]


def test_line_ends_and_a_mark_make_no_difference(files):
    checker = Checker({**files, "a.md": b"\xef\xbb\xbf" + TOOL.replace("\n", "\r\n").encode()})
    assert codes(checker) == []


def test_too_large_a_text_is_refused(files):
    checker = Checker({**files, "large.md": TOOL + "x" * 1_000_000})
    wanted = "The page holds 1.0 MB; a page holds at most 1 MB."
    assert [each.wrong for each in checker.checked().findings] == [wanted]


def test_a_folder_is_followed(folder, read_again):
    followed = FolderChecker(folder)
    read_again.clear()
    (folder / "tools" / "lamp.md").write_text(TOOL)
    (folder / "pan.svg").write_text("<svg/>")
    assert followed.refresh() == {"tools/lamp.md", "pan.svg"}
    assert followed.refresh() == frozenset()
    assert read_again == ["tools/lamp.md"]
    assert followed.checked() == check(folder)
    (folder / "tools" / "lamp.md").rename(folder / "tools" / "light.md")
    (folder / "pan.svg").unlink()
    assert followed.refresh() == {"tools/lamp.md", "tools/light.md", "pan.svg"}
    assert followed.checked() == check(folder)


def test_a_change_within_the_same_moment_and_size_is_seen(folder):
    page = folder / "index.md"
    page.touch()
    followed = FolderChecker(folder)
    stamp = page.stat()
    page.write_text(page.read_text().replace("kind: page", "kind: pagr"))
    os.utime(page, ns=(stamp.st_atime_ns, stamp.st_mtime_ns))
    assert followed.refresh() == {"index.md"}


def test_an_old_file_is_not_opened_again(folder, monkeypatch):
    for path in folder.rglob("*"):
        os.utime(path, (1_000_000_000, 1_000_000_000))
    followed = FolderChecker(folder)
    monkeypatch.setattr("underhoist.check.read_bytes", None)  # a call would fail
    assert followed.refresh() == frozenset()


def test_a_folder_without_pages_keeps_what_was_read(folder):
    followed = FolderChecker(folder)
    before = followed.checked()
    shutil.rmtree(folder)
    with pytest.raises(Unusable, match="the folder cannot be read"):
        followed.refresh()
    assert followed.checked() == before
