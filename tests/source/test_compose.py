"""The front matter's nodes: the same with libyaml and, as in the browser, without it."""

from pathlib import Path

import pytest
import yaml

from underhoist.check import check
from underhoist.place import Place
from underhoist.source import compose as composing
from underhoist.source.compose import compose
from underhoist.source.nodes import Listed, Mapped, Scalar, written

TESTS = Path(__file__).parents[1]
FOLDERS = sorted(
    {path.parent for path in TESTS.glob("bad/*/expected.txt")} | {TESTS / "good" / "smallest"}
)
TEXT = "a: 1-2\n'b': [no, {c: 2026-11-25}]\nd:\n  - |\n    two\n    lines\n  - ''\n"


@pytest.fixture(params=["CBaseLoader", "BaseLoader"])
def loader(request, monkeypatch):
    monkeypatch.setattr(composing, "LOADER", getattr(yaml, request.param))


@pytest.mark.usefixtures("loader")
def test_nodes_are_texts_with_places():
    mapped, findings = compose(TEXT, "x.md")
    assert findings == []
    assert mapped.entries["a"] == Scalar("1-2", Place("x.md", 2, 4), "a")
    listed = mapped.entries["b"]
    assert isinstance(listed, Listed) and listed.at == Place("x.md", 3, 6)
    assert listed.items[0] == Scalar("no", Place("x.md", 3, 7), "b")
    assert isinstance(listed.items[1], Mapped)
    assert listed.items[1].names == {"c": Place("x.md", 3, 12)}
    block = mapped.entries["d"]
    assert isinstance(block, Listed)
    assert [each.at for each in block.items] == [Place("x.md", 5, 5), Place("x.md", 8, 5)]
    assert written(mapped) == "{a: 1-2, b: [no, {c: 2026-11-25}], d: [two\nlines\n, ]}"


def places(folder):
    return [(each.at.line, each.code, each.written) for each in check(folder).findings]


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda path: path.name)
def test_both_parsers_find_the_same(folder, monkeypatch):
    with_libyaml = places(folder)
    monkeypatch.setattr(composing, "LOADER", yaml.BaseLoader)
    assert places(folder) == with_libyaml
