"""The readings of a card as CSV, held against Python's own reader of CSV."""

import csv
import io
import json
import re
import shutil
import subprocess
import sys
from datetime import datetime
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

HERE = Path(__file__).parent
NODE = shutil.which("node", path=str(Path(sys.executable).parent)) or shutil.which("node")
PLAIN_NUMBER = re.compile(r"[-+]?\d+(\.\d+)?", re.ASCII)
COLUMNS = [
    "card", "vehicle", "procedure", "step", "reading", "when", "value", "unit", "low", "high",
    "outside", "reason", "who", "at",
]  # fmt: skip
FORMULA = tuple("=+-@＝＋－＠\t\r\n")
"""What a spreadsheet may take for a formula: OWASP, "CSV Injection"."""


def written(script: str, given_text: str = "") -> str:
    run = subprocess.run(
        [str(NODE), str(HERE / script)], input=given_text.encode(), capture_output=True, check=True
    )
    return run.stdout.decode("utf-8")


def read_back(text: str) -> list[list[str]]:
    """Read as the csv module does, without the mark that stands in front."""
    assert text.startswith("\ufeff")
    return list(csv.reader(io.StringIO(text[1:], newline=""), strict=True))


def test_the_readings_of_a_card():
    head, *rows = read_back(written("csv_of_card.js"))
    assert head == COLUMNS
    turns, half, litres, result, answer = (dict(zip(head, row, strict=True)) for row in rows)
    about = {
        "card": "card-1", "vehicle": "Marlow Drover, green", "procedure": "Take the pan off",
        "step": "1", "reading": "Turns until the adjuster seats", "when": "as found", "value": "3",
        "unit": "turns", "low": "1.25", "high": "2", "outside": "yes",
        "reason": "'=HYPERLINK(\"there\")\nand more", "who": "RB",
    }  # fmt: skip
    assert about.items() <= turns.items()
    assert datetime.fromisoformat(turns["at"]).tzinfo is not None
    cold = {"reading": 'Line, "cold"', "value": "-1.5", "low": "-0.5", "high": "", "outside": "yes"}
    assert cold.items() <= half.items()
    assert half["reason"] == "'@cold"
    unread = {"step": "2", "value": "", "low": "", "high": "", "outside": "", "unit": "litres"}
    assert unread.items() <= litres.items()
    looked = {
        "procedure": "'=It hangs on", "reading": "The hose", "when": "result of a check",
        "value": "bad", "unit": "", "reason": "'+split", "who": "SL",
    }  # fmt: skip
    assert looked.items() <= result.items()
    kept = {
        "procedure": "Shift check", "when": "answer of a calculator",
        "value": "late-light or late-all", "reason": "Late.", "who": "KM",
    }  # fmt: skip
    assert kept.items() <= answer.items()


def test_every_line_ends_in_cr_lf_and_none_is_empty():
    text = written("csv_rows.js", json.dumps([["a", "b"], ["c", "d\r\ne"]]))
    assert text == '\ufeffa,b\r\nc,"d\r\ne"\r\n'  # RFC 4180, section 2, rules 1, 2 and 6


def test_quotes_are_doubled():
    text = written("csv_rows.js", json.dumps([['a "b" c', "d,e", " f"]]))
    assert text == '\ufeff"a ""b"" c","d,e"," f"\r\n'  # RFC 4180, section 2, rules 5 and 7


def test_plain_numbers_stay_numbers_and_formulas_become_text():
    row = ["-1.5", "+3", "-", "-1+2", "=1", "@a", "\t=1", "1 = 1"]
    [back] = read_back(written("csv_rows.js", json.dumps([row])))
    assert back == ["-1.5", "+3", "'-", "'-1+2", "'=1", "'@a", "'\t=1", "1 = 1"]


CELL = st.text(st.characters(exclude_categories=("Cs",), exclude_characters="\0"))
ROW = st.lists(CELL, min_size=2, max_size=5)


@settings(max_examples=25, deadline=None)
@given(st.lists(ROW, min_size=1, max_size=30))
def test_whatever_was_written_comes_back_and_nothing_is_a_formula(rows):
    def harmless(cell: str) -> str:
        risky = cell.startswith(FORMULA) and not PLAIN_NUMBER.fullmatch(cell)
        return f"'{cell}" if risky else cell

    back = read_back(written("csv_rows.js", json.dumps(rows)))
    assert back == [[harmless(cell) for cell in row] for row in rows]
