"""`not-written-yet`: exact wording, and silence where nothing is wrong."""


def test_in_a_step(manual):
    manual.body(
        "kestrel-3/count-turns.md", "## Steps\n\n1. Take <reading:turns-to-seat>.\n\n    Why: ???\n"
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:16:10 not-written-yet (stop)",
            "Why: ???",
            "Something is not written yet here.",
            "Write it in place of ???, or take the line out.",
        )
    ]


def test_two_in_one_line_are_two_places(manual):
    manual.body("index.md", "Ask ??? about ????.\n")
    assert [place for place, *_ in manual.found()] == [
        "index.md:6:5 not-written-yet (stop)",
        "index.md:6:15 not-written-yet (stop)",
    ]


def test_in_the_front_matter(manual):
    manual.keys("kestrel-3/count-turns.md", "minutes: ???\n")
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:10 not-written-yet (stop)",
            "???",
            "minutes is not written yet.",
            "Write it in place of ???.",
        )
    ]


def test_every_place_of_the_front_matter_and_the_text_in_one_run(manual):
    manual.keys("tools/slide-hammer.md", "summary: ??? and more\ntorque_range: ???\n")
    manual.body("tools/slide-hammer.md", "Look for: ???\n")
    assert set(manual.codes()) == {"not-written-yet"}
    assert len(manual.codes()) == 3


def test_in_a_list_and_in_a_set_of_keys(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
parts:
  rear-seal: {name: "???"}
  front-seal:
    name: ???
""",
    )
    manual.keys("kestrel-3/set-band.md", 'consumables: [Rags, "???"]\n')
    assert manual.codes() == ["not-written-yet"] * 3


def test_without_quotes_between_braces_yaml_cannot_be_read(manual):
    manual.keys("kestrel-3/set-band.md", "consumables: [Rags, ???]\n")
    ((_, written, _, mend),) = manual.found()
    assert written == "consumables: [Rags, ???]"
    assert mend == 'Put ??? in quotes between braces or brackets: "???".'


def test_quoted_as_code_it_is_no_mark(manual):
    manual.body("index.md", "Write `???` where you must ask.\n\n```text\nWhy: ???\n```\n")
    assert manual.found() == []


def test_a_question_is_no_mark(manual):
    manual.body("index.md", "Is it hard? Does it slip??\n")
    assert manual.found() == []
