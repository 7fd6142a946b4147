"""`beyond-proof-load`: exact wording, and silence where nothing is wrong.

5/16-18 UNC in grade 8: stress area 0.05243 in² (ASME B1.1), proof stress 120 000 psi (SAE J429),
so 0.20 x 6292 lbf x 0.3125 in = 393 lbf·in, 32.8 lbf·ft. M8 x 1.25 in class 12.9: 36.6 mm² and
970 N/mm² (ISO 898-1), so 0.20 x 35 500 N x 0.008 m = 56.8 N·m.
"""

import pytest


def fastener(torque, thread):
    return f"fasteners:\n  cover: {{name: Cover bolts, torque: {torque}, thread: {thread}}}\n"


def test_twelvefold_slip(manual):
    manual.keys("kestrel-3/set-band.md", fastener("108 lbf*ft", "5/16-18 UNC"))
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:38 beyond-proof-load (stop)",
            "108 lbf*ft",
            "A dry 5/16-18 UNC screw of Grade 8 is stretched beyond 32.8 lbf·ft.",
            "Did you mean 108 lbf·in?",
        )
    ]


def test_nothing_plausible_in_another_unit(manual):
    manual.keys("kestrel-3/set-band.md", fastener("2000 N*m", "M8 x 1.25"))
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:38 beyond-proof-load (stop)",
            "2000 N*m",
            "A dry M8x1.25 screw of Class 12.9 is stretched beyond 56.8 N·m.",
            "Look whether the unit is right.",
        )
    ]


@pytest.mark.parametrize(
    ("torque", "thread"),
    [
        ("32 lbf*ft", "5/16-18 UNC"),
        ("56 N*m", "M8 x 1.25"),
        ("500 N*m", "tapered, limited_by: It seals in its own taper"),
    ],
)
def test_possible(manual, torque, thread):
    manual.keys("kestrel-3/set-band.md", fastener(torque, thread))
    assert manual.found() == []


def test_just_beyond(manual):
    manual.keys("kestrel-3/set-band.md", fastener("33 lbf*ft", "5/16-18 UNC"))
    assert manual.codes() == ["beyond-proof-load"]
