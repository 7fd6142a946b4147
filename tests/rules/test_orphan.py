"""`orphan`: exact wording, and silence where nothing is wrong."""

import pytest

PAGE = "---\nkind: {kind}\ntitle: Bays\nsummary: How they are numbered.\n{more}---\n"
HAZARD = "signal: caution\nharm: It trips you.\navoid: Look down.\n"


def test_plain_page(manual):
    manual.page("bays.md", PAGE.format(kind="page", more=""))
    assert manual.found() == [
        (
            "bays.md:3:8 orphan (look)",
            "Bays",
            "No page links to this one.",
            "Link to it where it is needed.",
        )
    ]


def test_a_page_that_links_to_itself_only(manual):
    manual.page("bays.md", PAGE.format(kind="page", more="") + "[Here](bays.md)\n")
    assert manual.codes() == ["orphan"]


def test_torque_and_part(manual):
    manual.keys("kestrel-3/set-band.md", "parts: []\n")
    manual.keys(
        "families/kestrel-3.md",
        """\
adjustments:
  front-band: {name: Front band, seat: band-seat, back_off: 1 1/2 turns}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:21:24 orphan (look)",
            "Band locknut",
            "No procedure names the torque band-locknut.",
            "Add band-locknut to the torques of the procedure that needs it.",
        ),
        (
            "families/kestrel-3.md:24:11 orphan (look)",
            "Rear seal",
            "No procedure names the part rear-seal.",
            "Add rear-seal to the parts of the procedure that needs it.",
        ),
    ]


def test_tool(manual):
    manual.page("tools/creeper.md", PAGE.format(kind="tool", more=""))
    assert manual.found() == [
        (
            "tools/creeper.md:3:8 orphan (look)",
            "Bays",
            "No procedure fetches this tool.",
            "Add creeper to the tools of the procedure that takes it, or drop the page.",
        )
    ]


def test_hazard(manual):
    manual.page("hazards/kerb.md", PAGE.format(kind="hazard", more=HAZARD))
    assert manual.found() == [
        (
            "hazards/kerb.md:3:8 orphan (look)",
            "Bays",
            "No procedure gives this caution, and nothing asks for it.",
            "Add kerb to cautions where it belongs, or say required_when.",
        )
    ]


def test_drawing(manual):
    manual.page("drawings/pan.svg", "<svg/>\n")
    assert manual.found() == [
        (
            "drawings/pan.svg:1:1 orphan (look)",
            "",
            "No page shows this drawing.",
            "Show it where it helps by ![what it shows](its path), or drop the file.",
        )
    ]


@pytest.mark.parametrize("when", ["tools: [slide-hammer]", "areas: [yard]", "words: [kerb]"])
def test_a_hazard_on_watch(manual, when):
    more = f"{HAZARD}required_when: {{{when}}}\n"
    manual.page("hazards/kerb.md", PAGE.format(kind="hazard", more=more))
    assert manual.found() == []


def test_named_in_a_text_alone(manual):
    manual.page("tools/creeper.md", PAGE.format(kind="tool", more=""))
    manual.page("hazards/kerb.md", PAGE.format(kind="hazard", more=HAZARD))
    manual.page("drawings/pan.svg", "<svg/>\n")
    manual.body("index.md", "<tool:creeper>, <hazard:kerb>, ![The pan](drawings/pan.svg)\n")
    assert manual.found() == []


def test_procedures_and_faults_need_no_link(manual):
    manual.body("index.md", "Nothing here.\n")
    assert manual.found() == []


def test_what_a_dead_reference_may_have_meant(manual):
    manual.keys("kestrel-3/set-band.md", "parts: [rear-seel]\n")
    assert manual.codes() == ["dead-reference"]


def test_while_a_page_cannot_be_read(manual):
    manual.page("tools/creeper.md", PAGE.format(kind="tool", more=""))
    manual.keys("any-unit/leak-check.md", "minutes: soon\n")
    assert manual.codes() == ["wrong-value"]
