"""`wrong-value`: exact wording, and silence where nothing is wrong."""

import pytest

from underhoist.check import check


def test_not_a_whole_number(manual):
    manual.keys("kestrel-3/set-band.md", "minutes: 2.5\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:10 wrong-value (stop)",
            "2.5",
            "minutes is a whole number.",
            "Write digits only, such as 25.",
        )
    ]


def test_digits_of_another_script(manual):
    manual.keys("kestrel-3/set-band.md", 'minutes: "٢٥"\n')
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:10 wrong-value (stop)",
            "٢٥",
            "minutes is a whole number.",
            "Write digits only, such as 25.",
        )
    ]


def test_not_a_number(manual):
    manual.keys("families/kestrel-3.md", 'reference: {tyre: 205/70 R 14, axle: "2,92"}\n')
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:38 wrong-value (stop)",
            "2,92",
            "A comma in a number can mean two things.",
            "Write 2.92, if that is meant.",
        )
    ]


def test_not_a_choice_near(manual):
    manual.keys("kestrel-3/set-band.md", "who: aprentice\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:6 wrong-value (stop)",
            "aprentice",
            "who is apprentice or senior.",
            "Did you mean apprentice?",
        )
    ]


def test_not_a_choice(manual):
    manual.keys("kestrel-3/set-band.md", "who: anybody\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:6 wrong-value (stop)",
            "anybody",
            "who is apprentice or senior.",
            "Write apprentice or senior.",
        )
    ]


def test_list_for_text(manual):
    manual.keys("kestrel-3/set-band.md", "title: [Set, band]\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:8 wrong-value (stop)",
            "[Set, band]",
            "title wants one value here, not a list.",
            "Write one value, in quotes if it begins with a bracket or a brace.",
        )
    ]


def test_keys_for_text(manual):
    manual.keys("kestrel-3/set-band.md", "title: {Set: band}\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:8 wrong-value (stop)",
            "{Set: band}",
            "title wants one value here, not a set of keys.",
            "Write one value, in quotes if it begins with a bracket or a brace.",
        )
    ]


def test_text_for_keys(manual):
    manual.keys("families/kestrel-3.md", "reference: 205/70 R 14\n")
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:12 wrong-value (stop)",
            "205/70 R 14",
            "reference is a set of keys with values, not one text.",
            "Write tyre and axle indented below it, each with a colon and its value.",
        )
    ]


def test_list_for_names(manual):
    manual.keys("kestrel-3/count-turns.md", "readings: [turns]\n")
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:9:11 wrong-value (stop)",
            "[turns]",
            "readings is a set of names with values, not a list.",
            "Write them indented below it, one a line, each with a colon and its value.",
        )
    ]


def test_keys_for_list(manual):
    manual.keys("kestrel-3/set-band.md", "tools: {a: b}\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:8 wrong-value (stop)",
            "{a: b}",
            "tools is a list, not a set of keys.",
            "Begin each item with a dash.",
        )
    ]


def test_list_without_brackets(manual):
    manual.keys("kestrel-3/set-band.md", "tools: inch-pound-wrench, square-socket\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:8 wrong-value (stop)",
            "inch-pound-wrench, square-socket",
            "tools holds several values here that are written as one.",
            "Write them as a list in brackets: [inch-pound-wrench, square-socket].",
        )
    ]


def test_nothing_written(manual):
    manual.keys("kestrel-3/set-band.md", "minutes:\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:9 wrong-value (stop)",
            "",
            "Nothing is written after minutes.",
            "Write its value, or take the line out.",
        )
    ]


def test_bad_id(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        """\
readings:
  Turns To Seat: {name: Turns, unit: turn, when: as found, limits: 1 to 2 turns}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:3 wrong-value (stop)",
            "Turns To Seat",
            "An id is written with lower-case letters, digits and hyphens.",
            "Write turns-to-seat.",
        )
    ]


def test_bad_file_name(manual):
    manual.page(
        "tools/Big Hammer.md",
        """\
---
kind: tool
title: A
summary: B
---
""",
    )
    assert manual.found() == [
        (
            "tools/Big Hammer.md:1:1 wrong-value (stop)",
            "Big Hammer",
            "The file name is written with lower-case letters, digits and hyphens.",
            "Write big-hammer.",
        )
    ]


def test_comma_in_a_quantity(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
fluid:
  specification: DX-2
  service_fill: "4,2 L"
  dry_fill: 8.6 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:25:17 wrong-value (stop)",
            "4,2 L",
            "A comma in a number can mean two things.",
            "Write 4.2 L.",
        )
    ]


def test_not_a_range(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        """\
readings:
  turns-to-seat: {name: Turns, unit: turn, when: as found, limits: 2 turns}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:68 wrong-value (stop)",
            "2 turns",
            "This is not a range with two ends.",
            'Write two numbers with "to" between them and their unit, such as 1 to 2 turns.',
        )
    ]


def test_likelihood(manual):
    manual.keys(
        "faults/late-shifts.md",
        """\
causes:
  worn-band: {name: Worn band, likelihood: often}
""",
    )
    assert manual.found() == [
        (
            "faults/late-shifts.md:10:44 wrong-value (stop)",
            "often",
            "likelihood is a percentage.",
            "Write a number and %, such as 40 %.",
        )
    ]


def test_words_that_yaml_would_guess_stay_text(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
title: no
author: 2026-11-25
""",
    )
    assert manual.found() == []


SEVERAL = "tools holds several values here that are written as one."


def _edits(manual):
    return [
        (each.wrong, each.mend, each.edit and each.edit.text)
        for each in check(manual.folder).findings
    ]


@pytest.mark.parametrize(
    ("keys", "wrong", "mend", "text"),
    [
        ("tools: [lamp; hoist]\n", SEVERAL, "Part them by commas: lamp, hoist.", "lamp, hoist"),
        (
            "tools: lamp; hoist\n",
            SEVERAL,
            "Write them as a list in brackets: [lamp, hoist].",
            "[lamp, hoist]",
        ),
        ("tools:\n  - lamp; hoist\n", SEVERAL, "Write each on its own.", None),
        (
            "tools: [Lamp Holder]\n",
            "tools is written with lower-case letters, digits and hyphens.",
            "Write lamp-holder.",
            "lamp-holder",
        ),
        (
            "who: aprentice\n",
            "who is apprentice or senior.",
            "Did you mean apprentice?",
            "apprentice",
        ),
        (
            "title: \u201cSet the band\u201d\n",
            "Curly quotes round a value are taken for a part of it.",
            'Write straight quotes ", or none.',
            "Set the band",
        ),
        (
            "title: \u201cSet: the band\u201d\n",
            "The text holds a colon of its own.",
            "Put the text after the first colon in quotes.",
            '"Set: the band"',
        ),
    ],
)
def test_mends_that_need_no_thought(manual, keys, wrong, mend, text):
    manual.keys("kestrel-3/set-band.md", keys)
    assert _edits(manual) == [(wrong, mend, text)]


def test_quotes_within_a_text_stay(manual):
    manual.keys("kestrel-3/set-band.md", "title: Set the \u201cfront\u201d band\n")
    assert _edits(manual) == []


@pytest.mark.parametrize(
    ("span", "mend", "text"),
    [
        ("6,2 to 6,5 mm", "Write 6.2 to 6.5 mm.", "6.2 to 6.5 mm"),
        ("1,500 to 2,000 rpm", "Write 1500 to 2000 rpm or 1.500 to 2.000 rpm.", None),
    ],
)
def test_a_decimal_comma_between_braces_is_one_finding(manual, span, mend, text):
    reading = f"{{name: Play, unit: mm, when: as found, limits: {span}}}"
    manual.keys("kestrel-3/set-band.md", f"readings:\n  play: {reading}\n")
    assert _edits(manual) == [("A comma in a number can mean two things.", mend, text)]
