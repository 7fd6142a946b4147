"""`wrench-out-of-range`: exact wording, and silence where nothing is wrong."""


def test_no_wrench(manual):
    manual.keys("kestrel-3/set-band.md", "tools: [square-socket]\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:10:11 wrench-out-of-range (stop)",
            "band-seat",
            "It is tightened to 120 lbf*in, and the tool list has no torque wrench.",
            "Add inch-pound-wrench to tools.",
        )
    ]


def test_too_small(manual):
    manual.keys("kestrel-3/set-band.md", "torques: [band-seat, band-locknut]\n")
    manual.body(
        "kestrel-3/set-band.md", "## Steps\n\n1. <torque:band-seat>, <torque:band-locknut>.\n"
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:22 wrench-out-of-range (stop)",
            "band-locknut",
            "It is tightened to 20 lbf*ft; inch-pound-wrench covers 30 to 200 lbf*in.",
            "Add a page for a wrench that covers it.",
        )
    ]


def test_wrench_with_faults(manual):
    manual.keys("tools/inch-pound-wrench.md", "scale: clicks\n")
    assert manual.found() == [
        (
            "tools/inch-pound-wrench.md:6:8 unit-unknown (stop)",
            "clicks",
            '"clicks" is not a unit known here.',
            "Write N·m, lbf·ft, lbf·in, ozf·in, kgf·m or kgf·cm.",
        )
    ]
