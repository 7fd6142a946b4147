"""`unknown-key`: exact wording, and silence where nothing is wrong."""


def test_near_one(manual):
    manual.keys("kestrel-3/set-band.md", "minuets: 25\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:16:1 unknown-key (stop)",
            "minuets",
            "There is no key minuets on this kind of page.",
            "Did you mean minutes?",
        )
    ]


def test_none_near(manual):
    manual.keys("tools/square-socket.md", "colour: blue\n")
    assert manual.found() == [
        (
            "tools/square-socket.md:5:1 unknown-key (stop)",
            "colour",
            "There is no key colour on this kind of page.",
            "The keys here are title, summary, author, torque_range and scale.",
        )
    ]


def test_inside(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        """\
readings:
  turns-to-seat: {name: Turns, unit: turn, when: as found, limits: 1 to 2 turns, limit: 3}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:82 unknown-key (stop)",
            "limit",
            "There is no key limit under turns-to-seat.",
            "Did you mean limits?",
        )
    ]


def test_kind(manual):
    manual.keys("kestrel-3/set-band.md", "kind: procedur\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:7 unknown-key (stop)",
            "procedur",
            "There is no kind of page procedur.",
            "Did you mean procedure?",
        )
    ]


def test_kind_not_near(manual):
    manual.keys("tools/square-socket.md", 'kind: "12"\n')
    assert manual.found() == [
        (
            "tools/square-socket.md:4:7 unknown-key (stop)",
            "12",
            "There is no kind of page 12.",
            "The kinds are unit-family, procedure, fault, tool, hazard and page.",
        )
    ]


def test_kind_a_list(manual):
    manual.keys("kestrel-3/set-band.md", "kind: [procedure, fault]\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:7 unknown-key (stop)",
            "[procedure, fault]",
            "There is no kind of page [procedure, fault].",
            "Did you mean procedure?",
        )
    ]


def test_given_by_the_file(manual):
    manual.keys("kestrel-3/set-band.md", "id: set-band\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:16:1 unknown-key (stop)",
            "id",
            "id is not written in the front matter; the page's file says it.",
            "Take the line out.",
        )
    ]


def test_misspelt_key_is_not_missing_too(manual):
    manual.page(
        "tools/new.md",
        """\
---
kind: tool
titel: A
summary: B
---
""",
    )
    assert manual.found() == [
        (
            "tools/new.md:3:1 unknown-key (stop)",
            "titel",
            "There is no key titel on this kind of page.",
            "Did you mean title?",
        )
    ]


def test_decimal_comma_between_braces(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        "readings:\n  turns: {name: Turns, unit: turn, when: as found, limits: 1,5 turns}\n",
    )
    assert [each[1:] for each in manual.found()] == [
        ("1,5 turns", "A comma in a number can mean two things.", "Write 1.5 turns."),
    ]
