"""Mends that are tried: the finding goes, no other comes, all other text stays as it was."""

from collections import Counter
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from underhoist.checker import Checker
from underhoist.finding import Edit, Finding, Severity
from underhoist.mends import apply, plan
from underhoist.place import Place
from underhoist.source.split import decoded

SMALLEST = Path(__file__).parents[1] / "good" / "smallest"
PAGES = {
    path.relative_to(SMALLEST).as_posix(): path.read_text(encoding="utf-8")
    for path in sorted(SMALLEST.rglob("*.md"))
}
BAND = "kestrel-3/set-band.md"

SLIPS = [
    ("summary:", "sumary:", None),
    ("minutes:", "minuets:", None),
    ("who: apprentice", "who: aprentice", None),
    ("kind: procedure", "kind: procedur", None),
    ("[inch-pound-wrench, ", "[inch-pound-wrench; ", None),
    ("tools: [inch-pound-wrench, ", "tools: [inch-pound-wrnch, ", None),
    ("cautions: [raised-vehicle", "cautions: [raised-vehicel", None),
    ("<torque:band-seat>", "<torque:band-seet>", None),
    ("who: apprentice\n", "who: apprentice\nwho: apprentice\n", None),
    ("title: Set", "title: Band: set", 'title: "Band: set'),
    ("title: Set", "title: \u201cSet", None),
    ("lbf*ft", "lbfft", "lbf·ft"),
]
"""What was right, the slip, and the mend where it is not the first."""


def slipped(file: str, right: str, slip: str) -> dict[str, str] | None:
    return {**PAGES, file: PAGES[file].replace(right, slip, 1)} if right in PAGES[file] else None


@pytest.mark.parametrize(
    ("file", "right", "slip"),
    [(file, right, slip) for right, slip, _ in SLIPS for file in PAGES if right in PAGES[file]],
)
def test_a_slip_is_mended(file, right, slip):
    texts = slipped(file, right, slip)
    if slip.startswith("title: \u201c"):
        texts[file] = texts[file].replace("\n", "\u201d\n", 3).replace("\u201d\n", "\n", 2)
    before = Checker(texts).checked().findings
    offered = [each for each in before if each.edit]
    made = plan(texts, ())
    assert offered, before
    after = Checker({**texts, **made.texts}).checked().findings
    assert not [each for each in after if each.edit]
    assert {each.wrong for each in after} <= {each.wrong for each in before}
    assert made.mended and set(made.texts) == {file}


def test_the_slips_that_must_be_mended_come_out_as_they_were():
    whole = {**PAGES}
    text = whole[BAND]
    for right, slip, _ in SLIPS[:4]:
        text = text.replace(right, slip, 1)
    made = plan({**whole, BAND: text}, ())
    assert made.texts == {BAND: PAGES[BAND]}
    assert len(made.mended) == sum(right in PAGES[BAND] for right, _, _ in SLIPS[:4])


ENDS = st.sampled_from(["\n", "\r\n", "\r"])


@settings(max_examples=60, deadline=None)
@given(slips=st.lists(st.sampled_from(SLIPS), min_size=1, max_size=4), end=ENDS, mark=st.booleans())
def test_line_ends_and_marks_stay(slips, end, mark):
    text = PAGES[BAND]
    for right, slip, _ in slips:
        text = text.replace(right, slip, 1)
    text = ("\ufeff" if mark else "") + text.replace("\n", end)
    texts = {**PAGES, BAND: text}
    before = Checker(texts).checked()
    made = plan(texts, ())
    new = made.texts.get(BAND, text)
    assert new.startswith("\ufeff") == mark
    assert new.replace(end, "").count("\r") == new.replace(end, "").count("\n") == 0
    after = Checker({**texts, **made.texts}).checked()
    gone = {(each.code, each.written, each.wrong) for each in made.mended}
    assert not gone & {(each.code, each.written, each.wrong) for each in after.findings}
    if BAND not in before.manual.unread.values():
        assert {each.wrong for each in after.findings} <= {each.wrong for each in before.findings}
    old, lines = (decoded(each.encode(), BAND).split("\n") for each in (text, new))
    lost = Counter(old) - Counter(lines)
    assert all(
        any(slip.split("\n")[-2 if slip.endswith("\n") else -1] in line for _, slip, _ in slips)
        for line in lost
    )


def test_an_edit_that_does_harm_is_not_made(monkeypatch):
    def bad(file, written):
        edit = Edit(file, 2, 1, 2, 5, written)
        return Finding("x", Severity.LOOK, Place(file, 2, 1), "w", "wrong", "mend", edit)

    checks = Checker.checked

    def checked(self, besides=()):
        return checks(self, (*besides, bad("index.md", "knid")))

    monkeypatch.setattr(Checker, "checked", checked)
    assert plan(PAGES, ()).texts == {}


def test_nothing_to_mend():
    made = plan(PAGES, ())
    assert made.texts == {} and made.mended == ()
    assert apply(PAGES[BAND], []) == PAGES[BAND]
