"""`dead-reference`: exact wording, and silence where nothing is wrong."""

import pytest


def test_torque_in_text(manual):
    manual.body(
        "kestrel-3/set-band.md",
        """\
## Steps

1. Seat to [the click](torque:band-seet).
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:19:12 dead-reference (stop)",
            "band-seet",
            "There is no torque band-seet for this page.",
            "Did you mean band-seat?",
        )
    ]


def test_tool_in_list(manual):
    manual.keys("kestrel-3/set-band.md", "tools: [inch-pound-wrench, square-sockt]\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:28 dead-reference (stop)",
            "square-sockt",
            "There is no tool square-sockt in this manual.",
            "Did you mean square-socket?",
        )
    ]


def test_none_near(manual):
    manual.body("index.md", "See <procedure:zzz>.\n")
    assert manual.found() == [
        (
            "index.md:6:5 dead-reference (stop)",
            "zzz",
            "There is no procedure zzz in this manual.",
            "Known here: leak-check, raise-vehicle, clean-adjuster, count-turns and set-band.",
        )
    ]


def test_others_offered(manual):
    manual.body(
        "any-unit/leak-check.md",
        """\
## Steps

1. Read <reading:zzz> and <part:qq>.
""",
    )
    assert manual.found() == [
        (
            "any-unit/leak-check.md:12:9 dead-reference (stop)",
            "zzz",
            "There is no reading zzz in this manual.",
            "Known here: count-turns/turns-to-seat.",
        ),
        (
            "any-unit/leak-check.md:12:27 dead-reference (stop)",
            "qq",
            "There is no part qq for this page.",
            "Known here: kestrel-3/rear-seal.",
        ),
    ]


def test_cause(manual):
    manual.keys(
        "faults/late-shifts.md",
        """\
checks:
  count: {name: Count, minutes: 10, access: hoist, rules_out: [worn-bend]}
""",
    )
    assert manual.found() == [
        (
            "faults/late-shifts.md:10:64 dead-reference (stop)",
            "worn-bend",
            "There is no cause worn-bend on this page.",
            "Did you mean worn-band?",
        )
    ]


def test_family(manual):
    manual.keys("kestrel-3/set-band.md", "unit_family: kestrel-2\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:14 dead-reference (stop)",
            "kestrel-2",
            "There is no unit family kestrel-2 in this manual.",
            "Did you mean kestrel-3?",
        )
    ]


def test_adjustment(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
adjustments:
  front-band: {name: Front band, seat: band-seta, back_off: 1 turn}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:40 dead-reference (stop)",
            "band-seta",
            "There is no torque band-seta for this page.",
            "Did you mean band-seat?",
        )
    ]


def test_calculator(manual):
    manual.body("index.md", "<calc:torque-unit>\n")
    assert manual.found() == [
        (
            "index.md:6:1 dead-reference (stop)",
            "torque-unit",
            "There is no calculator torque-unit in this manual.",
            "Did you mean torque-units?",
        )
    ]


def test_scheme(manual):
    manual.body("index.md", "<torqe:band-seat>\n")
    assert manual.found() == [
        (
            "index.md:6:1 dead-reference (stop)",
            "torqe:band-seat",
            "There is no kind of reference torqe.",
            "Did you mean torque?",
        )
    ]


def test_page(manual):
    manual.body("index.md", "[the band](kestrel-3/set-bend.md)\n")
    assert manual.found() == [
        (
            "index.md:6:1 dead-reference (stop)",
            "kestrel-3/set-bend.md",
            "There is no file kestrel-3/set-bend.md in this manual.",
            "Did you mean kestrel-3/set-band.md?",
        )
    ]


def test_drawing(manual):
    manual.body("index.md", "![Adjuster](drawings/adjuster.svg)\n")
    assert manual.found() == [
        (
            "index.md:6:1 dead-reference (stop)",
            "drawings/adjuster.svg",
            "There is no file drawings/adjuster.svg in this manual.",
            "Did you mean drawings/band-adjuster.svg?",
        )
    ]


def test_definition(manual):
    manual.body(
        "index.md",
        """\
See [the band][1].

[1]: kestrel-3/gone.md
""",
    )
    assert manual.found() == [
        (
            "index.md:8:1 dead-reference (stop)",
            "kestrel-3/gone.md",
            "There is no file kestrel-3/gone.md in this manual.",
            "Add the file, or take the link out.",
        )
    ]


def test_html(manual):
    manual.body("index.md", '<img src="drawings/gone.svg" alt="Gone">\n')
    assert manual.found() == [
        (
            "index.md:6:1 dead-reference (stop)",
            "drawings/gone.svg",
            "There is no file drawings/gone.svg in this manual.",
            "Add the file, or take the link out.",
        )
    ]


def test_whole_name(manual):
    manual.body(
        "index.md",
        """\
<torque:kestrel-3/band-seat> <reading:count-turns/turns-to-seat> <part:kestrel-3/rear-seal>
""",
    )
    assert manual.found() == []


def test_two_families(manual):
    family = (manual.folder / "families/kestrel-3.md").read_text()
    manual.page("families/heron-4.md", family.replace("Set its band by <procedure:set-band>.", ""))
    manual.keys(
        "kestrel-3/set-band.md",
        """\
unit_family: [kestrel-3, heron-4]
torques: [kestrel-3/band-seat]
parts: [kestrel-3/rear-seal, heron-4/rear-seal]
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:20:4 dead-reference (stop)",
            "band-seat",
            "Two of this page's unit families have a torque band-seat.",
            "Write kestrel-3/band-seat or heron-4/band-seat.",
        )
    ]


def test_page_with_faults_is_not_dead(manual):
    manual.keys("any-unit/leak-check.md", "minutes: soon\n")
    manual.body("index.md", "<procedure:leak-check> [it](any-unit/leak-check.md)\n")
    assert manual.found() == [
        (
            "any-unit/leak-check.md:8:10 wrong-value (stop)",
            "soon",
            "minutes is a whole number.",
            "Write digits only, such as 25.",
        )
    ]


def test_family_with_faults_hides_its_torques(manual):
    manual.keys("families/kestrel-3.md", "ratios: {first: x}\n")
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:17 wrong-value (stop)",
            "x",
            "first is a number.",
            "Write digits only, such as 2.92.",
        )
    ]


def test_code_and_comments_are_left_alone(manual):
    manual.body(
        "index.md",
        """\
`<torque:x>` ``a`<tool:y>`` <!-- <tool:z> -->

```
[a](gone.md)
```
""",
    )
    assert manual.found() == []


def test_web_and_headings_are_left_alone(manual):
    manual.body(
        "index.md",
        """\
[a](https://example.org/x) <mailto:a@example.org> [b](#top) [c](kestrel-3/set-band.md#steps)
""",
    )
    assert manual.found() == []


@pytest.mark.parametrize(
    ("text", "thing"),
    [
        ("[the seat]()", "link"),
        ("[the seat]( )", "link"),
        ("[the seat](<>)", "link"),
        ("![the seat]()", "image"),
    ],
)
def test_a_link_without_an_address(manual, text, thing):
    manual.body("index.md", f"Words.\n\nSee {text} there.\n")
    assert manual.found() == [
        (
            "index.md:8:5 dead-reference (stop)",
            text.partition("(")[0] + "()",
            f"The {thing} has no address.",
            "Write where it leads between the round brackets, or take the brackets out.",
        )
    ]


@pytest.mark.parametrize(
    "text",
    [
        "\\`[a](gone.md)\\`",  # no backtick is one
        "```a`` [a](gone.md) ``",  # the first three close with the next two
        "one ` here\nand there ` [a](gone.md) `",
        "```python title=a\n\n[a](gone.md)\n\n```",  # no fence to the site's Markdown
    ],
)
def test_what_only_looks_like_code_is_looked_into(manual, text):
    manual.body("index.md", text)
    assert [each[2] for each in manual.found()] == ["There is no file gone.md in this manual."]


def test_an_address_with_angle_brackets_inside_is_one(manual):
    manual.body("index.md", "See [a](<data:text/html,<b>1</b>>) there.\n")
    assert [each[0].partition(" ")[2] for each in manual.found()] == ["outside-manual (stop)"]
