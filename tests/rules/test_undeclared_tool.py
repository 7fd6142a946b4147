"""`undeclared-tool`: exact wording, and silence where nothing is wrong."""

import pytest

from underhoist.check import check
from underhoist.mends import apply

FILE = "kestrel-3/clean-adjuster.md"


def test_tool(manual):
    manual.body(
        FILE, "## Steps\n\n1. Pull with the <tool:slide-hammer>, then <tool:slide-hammer>.\n"
    )
    assert manual.found() == [
        (
            f"{FILE}:19:18 undeclared-tool (stop)",
            "slide-hammer",
            "The step takes the tool slide-hammer, and the page does not list it.",
            "Add slide-hammer to tools.",
        )
    ]


def test_part_by_its_whole_name(manual):
    manual.body(FILE, "## Steps\n\n1. Lay the <part:kestrel-3/rear-seal> on a rag.\n")
    assert manual.found() == [
        (
            f"{FILE}:19:12 undeclared-tool (stop)",
            "kestrel-3/rear-seal",
            "The step takes the part rear-seal, and the page does not list it.",
            "Add kestrel-3/rear-seal to parts.",
        )
    ]


@pytest.mark.parametrize(
    "text",
    [
        "1. Hold it with the <tool:square-socket>.",
        "1. Wipe it.\n\n    Note: Never with the <tool:slide-hammer>.",
        "1. Wipe it.\n\n## What follows\n\nThe <tool:slide-hammer> comes later.",
    ],
)
def test_listed_or_only_mentioned(manual, text):
    manual.body(FILE, f"## Steps\n\n{text}\n")
    assert manual.found() == []


def test_the_mend_adds_it_to_the_list(manual):
    manual.body(FILE, "## Steps\n\n1. Pull with the <tool:slide-hammer>.\n")
    manual.keys(FILE, "cautions: [raised-vehicle, flying-parts]\n")
    (finding,) = check(manual.folder).findings
    text = (manual.folder / FILE).read_text(encoding="utf-8")
    (manual.folder / FILE).write_text(apply(text, [finding.edit]), encoding="utf-8")
    assert manual.found() == []
    assert "tools: [inch-pound-wrench, square-socket, slide-hammer]\n" in apply(
        text, [finding.edit]
    )
