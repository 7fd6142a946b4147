"""`front-matter`: exact wording, and silence where nothing is wrong."""

import pytest
import yaml

from underhoist.source import compose


def test_missing(manual):
    manual.page("new.md", "# A page\n")
    assert manual.found() == [
        (
            "new.md:1:1 front-matter (stop)",
            "# A page",
            "The page does not begin with front matter.",
            "Begin it with a line of three dashes, its keys, and three dashes again.",
        )
    ]


def test_empty(manual):
    manual.page(
        "new.md",
        """\
---
---
text
""",
    )
    assert manual.found() == [
        (
            "new.md:1:1 front-matter (stop)",
            "",
            "The front matter is empty.",
            "Write kind: and title: first.",
        )
    ]


def test_only_comments(manual):
    manual.page(
        "new.md",
        """\
---
# later
---
text
""",
    )
    assert manual.found() == [
        (
            "new.md:1:1 front-matter (stop)",
            "",
            "The front matter is empty.",
            "Write kind: and title: first.",
        )
    ]


def test_no_end(manual):
    manual.page(
        "new.md",
        """\
---
kind: page
""",
    )
    assert manual.found() == [
        (
            "new.md:1:1 front-matter (stop)",
            "---",
            "The front matter has no end.",
            "Write three dashes on a line of their own below its last key.",
        )
    ]


def test_an_empty_file(manual):
    manual.page("new.md", "")
    assert manual.found() == [
        (
            "new.md:1:1 front-matter (stop)",
            "",
            "The page does not begin with front matter.",
            "Begin it with a line of three dashes, its keys, and three dashes again.",
        )
    ]


def test_a_list(manual):
    manual.page(
        "new.md",
        """\
---
- kind
- page
---
""",
    )
    assert manual.found() == [
        (
            "new.md:2:1 front-matter (stop)",
            "[kind, page]",
            "The front matter is not a set of keys with values.",
            "Write a key, a colon and a value, such as title: Set the band.",
        )
    ]


def test_a_text(manual):
    manual.page(
        "new.md",
        """\
---
kind
---
""",
    )
    assert manual.found() == [
        (
            "new.md:2:1 front-matter (stop)",
            "kind",
            "The front matter is not a set of keys with values.",
            "Write a key, a colon and a value, such as title: Set the band.",
        )
    ]


def test_colon_in_text(manual):
    manual.keys("kestrel-3/set-band.md", "title: Set: the band\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:11 front-matter (stop)",
            "title: Set: the band",
            "The text holds a colon of its own.",
            "Put the text after the first colon in quotes.",
        )
    ]


def test_open_bracket(manual):
    manual.page(
        "new.md",
        """\
---
kind: page
title: A
summary: [a
---
""",
    )
    assert manual.found() == [
        (
            "new.md:4:10 front-matter (stop)",
            "summary: [a",
            "The bracket that opens here is not closed.",
            "Close it with ]; part items by commas.",
        )
    ]


def test_tab(manual):
    manual.page("new.md", "---\nkind: page\n\ttitle: A\n---\n")
    assert manual.found() == [
        (
            "new.md:3:1 front-matter (stop)",
            "title: A",
            "A tab stands where only spaces may.",
            "Indent with spaces, not with tabs.",
        )
    ]


def test_key_that_is_a_list(manual):
    manual.page(
        "new.md",
        """\
---
? [a]
: b
---
""",
    )
    assert manual.found() == [
        (
            "new.md:2:3 front-matter (stop)",
            "[a]",
            "A key is one plain text, not a list or a set of keys.",
            "Write the key as a word before the colon; put text in braces in quotes.",
        )
    ]


def test_second_document(manual):
    manual.page(
        "new.md",
        """\
---
kind: page
...
a: b
---
""",
    )
    assert manual.found() == [
        (
            "new.md:4:1 front-matter (stop)",
            "a: b",
            "The front matter is two documents.",
            "Take the line of dots out.",
        )
    ]


def test_too_deep(manual):
    manual.page("new.md", "---\nkind: " + "[" * 40 + "]" * 40 + "\n---\n")
    assert manual.found() == [
        (
            "new.md:2:18 front-matter (stop)",
            "[",
            "The front matter is nested more than 12 levels deep.",
            "Take the extra brackets or indentation out.",
        )
    ]


def test_control_sign(manual):
    manual.page("new.md", "---\nkind: page\ntitle: a\x07b\n---\n")
    assert manual.found() == [
        (
            "new.md:3:9 front-matter (stop)",
            "title: a�b",
            "A sign that cannot be printed stands here.",
            "Take it out.",
        )
    ]


def test_key_without_colon(manual):
    file = "kestrel-3/count-turns.md"
    page = manual.folder / file
    page.write_text(page.read_text(encoding="utf-8").replace("minutes: ", "minutes "), "utf-8")
    row = page.read_text(encoding="utf-8").split("\n").index("minutes 10") + 1
    assert manual.found()[0] == (
        f"{file}:{row}:1 front-matter (stop)",
        "minutes 10",
        "This line is no key with a value.",
        "Write a colon and a space after the key.",
    )


BROKEN = [
    (
        "title: 'it's'",
        12,
        "The text goes on after the single quote that closes it.",
        "Put the whole text in double quotes.",
    ),
    (
        'title: "a" b',
        12,
        "Something follows after the end of the value.",
        "Take it out, or put the whole text in quotes.",
    ),
    (
        "title: @home",
        8,
        "A text cannot begin with the sign @ unless it is in quotes.",
        "Put the text in quotes.",
    ),
    (
        'title: "a\\qb"',
        None,
        "After a backslash in double quotes only certain letters can stand.",
        "Write the text in single quotes.",
    ),
    (
        "title: - a",
        8,
        "A list cannot begin on the line of its key.",
        "Write it in brackets, or each item on a line of its own, with a dash.",
    ),
    (
        "title: ]",
        8,
        "A bracket or a comma stands here that belongs to nothing.",
        "Take it out, or put the text in quotes.",
    ),
    ("title: & b", None, "A text cannot begin with this sign.", "Put the text in quotes."),
    (
        "title: |b",
        None,
        "After | or > the text begins on the next line.",
        "Put it there, indented; or put the text in quotes.",
    ),
    (
        "title: a\n  area: b",
        None,
        "A key cannot stand here: its indentation or the line above is wrong.",
        "Begin it below the keys it belongs with, and see that the line above has a colon.",
    ),
    (
        "title: {a: b",
        8,
        "The brace that opens here is not closed.",
        "Close it with }; part keys by commas.",
    ),
    (
        "title: 'a",
        8,
        "The quotes that open here are not closed.",
        "Close them at the end of the text.",
    ),
]


@pytest.mark.parametrize("loader", ["CBaseLoader", "BaseLoader"])
@pytest.mark.parametrize("case", BROKEN, ids=lambda case: case[0][:20])
def test_both_parsers_complain_in_the_same_plain_words(manual, monkeypatch, loader, case):
    line, column, wrong, mend = case
    monkeypatch.setattr(compose, "LOADER", getattr(yaml, loader))
    manual.page("new.md", f"---\nkind: page\n{line}\nsummary: s\n---\n")
    (found,) = [each for each in manual.found() if each[0].startswith("new.md")]
    assert found[2:] == (wrong, mend)
    if column:
        assert found[0] == f"new.md:3:{column} front-matter (stop)"
