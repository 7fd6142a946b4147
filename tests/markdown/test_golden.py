"""Input and output, whole and exact: one file of cases a subject.

A case is a title after `# `, the Markdown, a line `---->`, and the HTML that must come of it.
"""

import re
from pathlib import Path

import pytest

from underhoist.model import Body

CASES = Path(__file__).parent / "cases"


def cases():
    for file in sorted(CASES.glob("*.txt")):
        for block in re.split(r"^#### ", file.read_text(encoding="utf-8"), flags=re.MULTILINE)[1:]:
            title, _, rest = block.partition("\n")
            written, _, wanted = rest.partition("\n---->\n")
            yield pytest.param(written.strip("\n"), wanted.strip("\n"), id=f"{file.stem}: {title}")


@pytest.mark.parametrize(("written", "wanted"), list(cases()))
def test_markdown_becomes_exactly_this(written, wanted, reader):
    parts = []
    for section in reader.sections(Body(written, 1)):
        heading = f"[{section.id}: {section.heading}]\n" if section.heading else ""
        parts.append(heading + section.html)
    assert "\n".join(parts).strip("\n") == wanted


def test_there_are_cases_of_every_subject():
    assert {file.stem for file in CASES.iterdir()} == {
        "blocks",
        "headings",
        "links",
        "references",
        "safety",
    }
