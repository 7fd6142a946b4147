"""`front-matter`: exact wording, and silence where nothing is wrong."""


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
            "The YAML cannot be read here: mapping values are not allowed in this context.",
            "Put the text after the first colon in quotes: it holds a colon of its own.",
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
            "The YAML cannot be read here: did not find expected ',' or ']'.",
            "Close the bracket that opens here with ].",
        )
    ]


def test_tab(manual):
    manual.page("new.md", "---\nkind: page\n\ttitle: A\n---\n")
    assert manual.found() == [
        (
            "new.md:3:1 front-matter (stop)",
            "title: A",
            "The YAML cannot be read here: found a tab character that violates indentation.",
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
            "The YAML cannot be read here: did not find expected <document start>.",
            "Look at the indentation, quotes and brackets of this line and the one above.",
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
            "The YAML cannot be read here: control characters are not allowed.",
            "Take out the sign that cannot be printed.",
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
        "The YAML cannot be read here: could not find expected ':'.",
        "Write a colon and a space after the key.",
    )
