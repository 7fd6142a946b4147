"""`unaccepted-fluid`: exact wording, and silence where nothing is wrong."""


def test_other(manual):
    manual.keys("kestrel-3/set-band.md", "fluids: [DX-3, FM-5]\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:16 unaccepted-fluid (stop)",
            "FM-5",
            "Kestrel 3 takes DX-2 or DX-3.",
            "Write one of these, or add a fluid that supersedes them to accepts.",
        )
    ]


def test_any_unit(manual):
    manual.keys("any-unit/leak-check.md", "fluids: [FM-5]\n")
    assert manual.found() == []
