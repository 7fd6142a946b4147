"""`two-values`: exact wording, and silence where nothing is wrong."""


def test_same_id(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
fasteners:
  band-seat: {name: Seat, torque: 100 lbf*in}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:35 two-values (stop)",
            "100 lbf*in",
            "band-seat of Kestrel 3 is 120 lbf*in at families/kestrel-3.md:20 already.",
            "Keep one value and refer to it as torque:band-seat.",
        )
    ]


def test_same_name(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
fasteners:
  seat: {name: band adjuster seat, torque: 100 lbf*in}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:44 two-values (stop)",
            "100 lbf*in",
            "band-seat of Kestrel 3 is 120 lbf*in at families/kestrel-3.md:20 already.",
            "Keep one value and refer to it as torque:band-seat.",
        )
    ]


def test_twelvefold(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
fasteners:
  band-locknut: {name: Band locknut, torque: 20 lbf*in}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:46 two-values (stop)",
            "20 lbf*in",
            "band-locknut of Kestrel 3 is 20 lbf*ft at families/kestrel-3.md:21 already.",
            (
                "One is twelve times the other, so one unit is probably wrong. Keep "
                "one value and refer to it as torque:band-locknut."
            ),
        )
    ]


def test_same_value_in_another_unit(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
fasteners:
  band-locknut: {name: Band locknut, torque: 240 lbf*in}
""",
    )
    assert manual.found() == []


def test_within_the_family(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
fasteners:
  band-seat: {name: Band adjuster seat, torque: 120 lbf*in}
  band-locknut: {name: Band locknut, torque: 20 lbf*ft}
  locknut: {name: Band locknut, torque: 25 lbf*ft}
""",
    )
    manual.body("index.md", "<torque:kestrel-3/locknut>\n")
    assert manual.found() == [
        (
            "families/kestrel-3.md:29:41 two-values (stop)",
            "25 lbf*ft",
            "band-locknut of Kestrel 3 is 20 lbf*ft at families/kestrel-3.md:28 already.",
            "Keep one value and refer to it as torque:band-locknut.",
        )
    ]
