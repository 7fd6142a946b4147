"""`fluids-must-not-mix`: exact wording, and silence where nothing is wrong."""

import pytest


@pytest.fixture
def strict(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
fluid:
  specification: DX-2
  accepts: [DX-3]
  never_with: [FM-5]
  service_fill: 4.2 L
  dry_fill: 8.6 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
""",
    )
    return manual


def test_in_a_procedure_of_the_family(strict):
    strict.keys("kestrel-3/set-band.md", "fluids: [DX-2, FM-5]\n")
    assert strict.found() == [
        (
            "kestrel-3/set-band.md:15:16 fluids-must-not-mix (stop)",
            "FM-5",
            "FM-5 must not mix with DX-2 of Kestrel 3.",
            "Take it out, or give its work a procedure of its own.",
        )
    ]


def test_among_the_consumables(strict):
    strict.keys("kestrel-3/set-band.md", "consumables: [Rags, A cup of fm-5]\n")
    assert strict.found() == [
        (
            "kestrel-3/set-band.md:16:21 fluids-must-not-mix (stop)",
            "A cup of fm-5",
            "A cup of fm-5 must not mix with DX-2 of Kestrel 3.",
            "Take it out, or give its work a procedure of its own.",
        )
    ]


def test_side_by_side_for_any_unit(strict):
    strict.keys("any-unit/leak-check.md", "fluids: [FM-5, DX-3]\n")
    assert [each[0] for each in strict.found()] == [
        "any-unit/leak-check.md:9:10 fluids-must-not-mix (stop)"
    ]


def test_accepted_and_refused(strict):
    family = (strict.folder / "families/kestrel-3.md").read_text()
    strict.page("families/kestrel-3.md", family.replace("[FM-5]", "[dx-3]"))
    assert strict.found() == [
        (
            "families/kestrel-3.md:26:16 fluids-must-not-mix (stop)",
            "dx-3",
            "Kestrel 3 takes DX-3 on line 25.",
            "Take it out of one of the two.",
        )
    ]


@pytest.mark.parametrize("fluids", ["FM-5", "DX-2, DX-3", "FM-55, DX-2"])
def test_alone_or_accepted(strict, fluids):
    strict.keys("any-unit/leak-check.md", f"fluids: [{fluids}]\n")
    assert strict.found() == []
