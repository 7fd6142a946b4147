"""`too-little-clamp`: exact wording, and silence where nothing is wrong.

1/2-20 UNF in grade 2: stress area 0.1599 in² (ASME B1.1), proof stress 55 000 psi (SAE J429), so a
proof load of 8795 lbf. Oiled, K = 0.12 (common practice): 28 lbf·in make 28 / (0.12 x 0.5) = 467
lbf, 5 % of it. M8 x 1.25 in class 4.8: 36.6 mm² and 310 N/mm² (ISO 898-1), 11 350 N; 1 N·m makes
1042 N, 9 %.
"""

import pytest


def fastener(torque, thread, more=""):
    text = f"name: Cover bolts, torque: {torque}, thread: {thread}{more}"
    return f"fasteners:\n  cover: {{{text}}}\n"


def test_twelfth(manual):
    manual.keys("kestrel-3/set-band.md", fastener("28 lbf*in", "1/2-20 UNF"))
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:38 too-little-clamp (stop)",
            "28 lbf*in",
            "Even oiled, a screw 1/2-20 UNF of Grade 2 is loaded to 5 % of its proof load.",
            "Did you mean 28 lbf·ft? Where it is meant to be so low, say under limited_by what "
            "keeps it there.",
        )
    ]


def test_nothing_plausible_in_another_unit(manual):
    manual.keys("kestrel-3/set-band.md", fastener("1 N*m", "M8 x 1.25"))
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:38 too-little-clamp (stop)",
            "1 N*m",
            "Even oiled, a screw M8x1.25 of Class 4.8 is loaded to 9 % of its proof load.",
            "Where it is meant to be so low, say under limited_by what keeps it there.",
        )
    ]


def test_a_stated_grade_counts(manual):
    """120 lbf·in make 2000 lbf, 22.7 % of grade 2 but 14.7 % of grade 5 (85 000 psi)."""
    manual.keys("kestrel-3/set-band.md", fastener("120 lbf*in", "1/2-20 UNF", ", grade: grade 5"))
    assert manual.codes() == ["too-little-clamp"]


@pytest.mark.parametrize(
    ("torque", "thread", "more"),
    [
        ("120 lbf*in", "1/2-20 UNF", ""),
        ("28 lbf*ft", "1/2-20 UNF", ", grade: grade 5"),
        ("28 lbf*in", "1/2-20 UNF", ", limited_by: Cork gasket"),
    ],
)
def test_possible(manual, torque, thread, more):
    manual.keys("kestrel-3/set-band.md", fastener(torque, thread, more))
    assert manual.found() == []
