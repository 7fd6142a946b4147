"""`other-word`: exact wording, the edit, and silence where another word is meant or was said."""

import pytest

from underhoist import mends
from underhoist.check import check

WORDS = """\
words:
  bush: {also: [bushing, plain bearing], heard: [sleeve]}
  extension: {also: [tail housing]}
  fluid: {also: [ATF], heard: [oil]}
  kick-down: {also: [kickdown]}
  spanner: {also: [wrench]}
  torque wrench: {meaning: It reads a torque.}
  cross-member: {}
  assembly: {also: [make-up]}
  lbf·ft: {also: [ft-lb]}
"""
PAGE = "any-unit/leak-check.md"


@pytest.fixture
def said(manual):
    """What a text with this page of words is told, each as written, word and what to write."""
    manual.keys("index.md", WORDS)

    def tell(text):
        manual.body("tools/square-socket.md", f"{text}\n")
        found = [each for each in check(manual.folder).findings if each.code == "other-word"]
        return [(each.written, each.wrong, each.edit and each.edit.text) for each in found]

    return tell


def test_wording(manual):
    manual.keys("index.md", WORDS)
    manual.body("tools/square-socket.md", "It fits no bushing.\n")
    assert manual.found() == [
        (
            "tools/square-socket.md:6:12 other-word (look)",
            "bushing",
            "This manual says bush.",
            "Write bush, or put what somebody else said in quotation marks.",
        )
    ]


@pytest.mark.parametrize(
    ("written", "ours", "instead"),
    [
        ("bushing", "bush", "bush"),
        ("bushings", "bush", "bushes"),
        ("Bushings", "bush", "Bushes"),
        ("BUSHINGS", "bush", "BUSHES"),
        ("plain bearing", "bush", "bush"),
        ("plain-bearings", "bush", "bushes"),
        ("Tail housing", "extension", "Extension"),
        ("tail\nhousing", "extension", "extension"),
        ("ATF", "fluid", "fluid"),
        ("kickdown", "kick-down", "kick-down"),
        ("ft-lbs", "lbf·ft", "lbf·ft"),
        ("wrench", "spanner", "spanner"),
        ("make-ups", "assembly", "assemblies"),
    ],
)
def test_case_and_number_are_kept(said, written, ours, instead):
    quoted = " ".join(written.split())
    assert said(f"Take the {written}.") == [(quoted, f"This manual says {ours}.", instead)]


@pytest.mark.parametrize(
    "text",
    [
        "The bush, the fluid, the extension and the spanner.",
        "Put a sleeve into the oil.",
        'The owner says "the bushing knocks".',
        "The owner says “the bushing knocks”.",
        "Say `bushing` in code.",
        "See [the bush](https://example.org/bushing).",
        "Take the torque wrench, or two torque wrenches.",
        "The rebushing and the bushing-like one.",
        "A housing at the tail.",
        "<!-- bushing -->",
    ],
)
def test_silence(said, text):
    assert said(text) == []


def test_title_and_names_are_read_but_not_the_complaint(manual):
    manual.keys("index.md", WORDS)
    manual.keys("tools/square-socket.md", "title: Bushing socket\n")
    manual.keys("faults/late-shifts.md", "complaint: The bushing knocks\n")
    manual.keys("kestrel-3/set-band.md", "consumables: [bushing grease]\n")
    found = [f"{each.at} {each.written}" for each in check(manual.folder).findings]
    assert found == ["kestrel-3/set-band.md:16:15 bushing", "tools/square-socket.md:4:8 Bushing"]


def test_the_page_of_words_may_say_them(manual):
    manual.keys("index.md", WORDS)
    manual.body("index.md", "[A bushing](kestrel-3/set-band.md) is a bush.\n")
    assert manual.found() == []


def test_the_mend_leaves_nothing_to_find(manual):
    manual.keys("index.md", WORDS)
    manual.body(
        "tools/square-socket.md", "Two bushings and a\ntail housing, or a\ntail\nhousing.\n"
    )
    edits = [each.edit for each in check(manual.folder).findings]
    path = manual.folder / "tools/square-socket.md"
    path.write_text(mends.apply(path.read_text(), edits))
    assert path.read_text().endswith("Two bushes and a\nextension, or a\nextension.\n")
    assert manual.found() == []


def test_the_mend_in_the_front_matter_where_it_stands_without_quotes(manual):
    manual.keys("index.md", WORDS)
    manual.keys("tools/square-socket.md", 'title: Socket for bushings\nsummary: "For ATF."\n')
    first, second = check(manual.folder).findings
    assert str(first.at) == "tools/square-socket.md:3:19"
    assert (str(second.at), second.edit) == ("tools/square-socket.md:4:10", None)
    path = manual.folder / "tools/square-socket.md"
    path.write_text(mends.apply(path.read_text(), [first.edit]))
    assert "title: Socket for bushes\n" in path.read_text()


def test_a_manual_without_words_finds_nothing(manual):
    manual.body("tools/square-socket.md", "It fits no bushing.\n")
    assert manual.found() == []
