"""`ratio-contradicts-teeth`: exact wording, and silence where nothing is wrong."""


def test_first(manual):
    manual.keys("families/kestrel-3.md", "ratios: {first: 2.45, third: 1.0}\n")
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:17 ratio-contradicts-teeth (stop)",
            "2.45",
            "The tooth counts give 2.425 in first.",
            "Write 2.425, or mend the tooth counts on line 6.",
        )
    ]


def test_rounded(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
ratios: {first: 2.42, second: 1.42, third: 1, reverse: 2.35}
""",
    )
    assert manual.found() == []


def test_overdrive(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
gear_train:
  type: simpson-overdrive
  teeth: {sun: 30, ring: 74, overdrive_sun: 33, overdrive_ring: 79}
ratios: {fourth: 0.75}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:18 ratio-contradicts-teeth (stop)",
            "0.75",
            "The tooth counts give 0.705 in fourth.",
            "Write 0.705, or mend the tooth counts on line 26.",
        )
    ]


def test_other_train(manual):
    train = "gear_train: {type: ravigneaux, teeth: {sun: 30, ring: 74}}"
    manual.keys("families/kestrel-3.md", train)
    assert manual.found() == []
