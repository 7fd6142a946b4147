"""`variants-overlap`: exact wording, and silence where nothing is wrong."""

FAMILY = "families/kestrel-3.md"


def variants(first, second):
    return f"""\
parts:
  rear-seal:
    name: Rear seal
    variants:
      - {{name: Narrow, tell: Black lip, measures: {first}}}
      - {{name: Wide, tell: Red lip, measures: {second}}}
"""


def test_one_measure(manual):
    manual.keys(FAMILY, variants("{width: 5 to 6 mm}", "{width: 6 to 7 mm}"))
    assert manual.found() == [
        (
            "families/kestrel-3.md:29:55 variants-overlap (stop)",
            "6 to 7 mm",
            "A part of this width can also be Narrow: 5 to 6 mm, line 28.",
            "Add a measure that tells the two apart, or mend the one that overlaps.",
        )
    ]


def test_another_unit(manual):
    manual.keys(FAMILY, variants("{width: 25 to 26 mm}", "{width: 0.99 to 1.01 in}"))
    assert manual.codes() == ["variants-overlap"]


def test_a_second_measure_tells_them_apart(manual):
    first = "{width: 5 to 6 mm, bore: 30 to 31 mm}"
    manual.keys(FAMILY, variants(first, "{width: 5 to 6 mm, bore: 32 to 33 mm}"))
    assert manual.found() == []


def test_no_measure_in_common(manual):
    manual.keys(FAMILY, variants("{width: 5 to 6 mm}", "{bore: 5 to 6 mm}"))
    assert manual.found() == []
