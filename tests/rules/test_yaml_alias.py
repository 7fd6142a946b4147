"""`yaml-alias`: exact wording, and silence where nothing is wrong."""


def test_anchor(manual):
    manual.keys("kestrel-3/set-band.md", "consumables: &usual [Rags]\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:16:14 yaml-alias (stop)",
            "&usual",
            "An anchor names a value to repeat.",
            "Write the value itself, in quotes if it begins with * & or !.",
        )
    ]


def test_alias(manual):
    manual.keys("kestrel-3/set-band.md", "consumables: *usual\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:16:14 yaml-alias (stop)",
            "*usual",
            "An alias repeats another value.",
            "Write the value itself, in quotes if it begins with * & or !.",
        )
    ]


def test_tag(manual):
    manual.keys("kestrel-3/set-band.md", "minutes: !!int 25\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:10 yaml-alias (stop)",
            "!!int",
            "A tag gives a value another type.",
            "Write the value itself, in quotes if it begins with * & or !.",
        )
    ]


def test_own_tag(manual):
    manual.keys("kestrel-3/set-band.md", "minutes: !minutes 25\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:10 yaml-alias (stop)",
            "!minutes",
            "A tag gives a value another type.",
            "Write the value itself, in quotes if it begins with * & or !.",
        )
    ]


def test_quoted_is_text(manual):
    manual.keys("kestrel-3/set-band.md", 'consumables: ["*lint-free* rags", "!", "&"]\n')
    assert manual.found() == []
