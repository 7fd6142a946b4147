"""The one table of all benchmarks: exact layout, and rows of other benchmarks are kept."""

import importlib.util
import json
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def table():
    spec = importlib.util.spec_from_file_location("table", ROOT / "benchmarks/table.py")
    module = importlib.util.module_from_spec(spec)
    sys.modules["table"] = module  # attrs looks a class's module up
    spec.loader.exec_module(module)
    yield module
    del sys.modules["table"]


def lines(folder):
    text = (folder / "README.md").read_text(encoding="utf-8")
    return [line for line in text.splitlines() if line.startswith("| ")]


def test_a_row_shows_ours_the_reference_their_ratio_and_the_budget(table, tmp_path):
    row = table.Row(what="build", ours=24.81, unit="s", reference=20.0, against="stock",
                    budget="at most 1.25 times", held=True)  # fmt: skip
    assert table.enter("scale", [row], tmp_path)
    assert lines(tmp_path) == [
        "| what | ours | reference | ours : reference | budget | held |",
        "| build | 24.8 s | 20 s (stock) | 1.24 | at most 1.25 times | yes |",
    ]


def test_a_budget_that_is_not_held_is_said_and_fails(table, tmp_path):
    late = table.Row(what="late", ours=3, unit="s", budget="2 s", held=False)
    told = table.Row(what="size", ours=1234567, unit="B")
    assert not table.enter("one", [late, told], tmp_path)
    assert lines(tmp_path)[1:] == [
        "| late | 3 s |  |  | 2 s | **no** |",
        "| size | 1,234,567 B |  |  |  |  |",
    ]
    text = (tmp_path / "README.md").read_text(encoding="utf-8")
    assert "0 of 1 budgets are held." in text


def test_other_benchmarks_keep_their_rows_and_the_own_ones_are_replaced(table, tmp_path):
    for name, ours in (("b", 1), ("a", 2), ("b", 3)):
        table.enter(name, [table.Row(what=name, ours=ours, unit="")], tmp_path)
    assert lines(tmp_path)[1::2] == ["| a | 2 |  |  |  |  |", "| b | 3 |  |  |  |  |"]
    kept = json.loads((tmp_path / "table.json").read_text(encoding="utf-8"))
    assert list(kept) == ["a", "b"]
    assert kept["b"]["rows"][0]["ours"] == 3


def test_a_reference_of_nothing_makes_no_ratio(table):
    assert table.Row(what="x", ours=1, unit="s", reference=0.0).ratio is None
