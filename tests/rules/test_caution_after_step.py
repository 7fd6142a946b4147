"""`caution-after-step`: exact wording, and silence where nothing is wrong."""

from underhoist.check import check
from underhoist.mends import apply


def test_below_the_action(manual):
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. Loosen it.

    <hazard:hot-fluid>
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/clean-adjuster.md:21:5 caution-after-step (stop)",
            "<hazard:hot-fluid>",
            "The caution stands below the action of step 1.",
            "Put it first in the step.",
        )
    ]


def test_first(manual):
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. <hazard:hot-fluid>

    Loosen it.
2. Turn it.
""",
    )
    assert manual.found() == []


def test_two_first(manual):
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. <hazard:hot-fluid>

    [mind](hazard:raised-vehicle)

    Loosen it.
""",
    )
    assert manual.found() == []


def test_within_a_sentence(manual):
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. Loosen it.

    Why: see <hazard:hot-fluid>.
""",
    )
    assert manual.found() == []


def test_two_in_one_paragraph(manual):
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. <hazard:hot-fluid> <hazard:raised-vehicle>

    Loosen the locknut.
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/clean-adjuster.md:19:4 caution-after-step (stop)",
            "<hazard:hot-fluid> <hazard:raised-vehicle>",
            "Two cautions in one paragraph are read as an action.",
            "Give each a paragraph of its own, first in the step.",
        )
    ]


def test_the_mend_parts_them(manual):
    file = manual.folder / "kestrel-3/clean-adjuster.md"
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. <hazard:hot-fluid> [Up](hazard:raised-vehicle)

    Loosen the locknut.
""",
    )
    (finding,) = check(manual.folder).findings
    file.write_text(apply(file.read_text(encoding="utf-8"), [finding.edit]), encoding="utf-8")
    assert manual.found() == []
    assert file.read_text(encoding="utf-8").endswith(
        "1. <hazard:hot-fluid>\n\n    [Up](hazard:raised-vehicle)\n\n    Loosen the locknut.\n"
    )
