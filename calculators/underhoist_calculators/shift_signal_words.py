"""What is said of a signal gone wrong: its name, what to do, and the parts it points to.

All of it is common practice, no source. `{size}` is the fitted size, `{range}` its ends, `{most}`
what could still hide.
"""

from collections.abc import Mapping

from attrs import frozen

from underhoist_calculators.shift_signal import CABLE, VACUUM

Row = tuple[str, str]
"""A part of the vehicle, with what to look for; or a fault, with why it is ruled out."""


@frozen(kw_only=True)
class ChangeWords:
    """Words of one change; `unsized` and `means_unsized` where no size is known."""

    name: str
    unsized: str = ""
    means: str
    means_unsized: str = ""
    proof: str
    parts: tuple[Row, ...]
    fault: str
    at_most: str
    lacking: str


LOSS_WORDS = ChangeWords(
    name="a vacuum loss of {size}",
    means="A loss of {size} ({range}) between manifold and modulator fits. Read the vacuum at "
    "the modulator's own end of the hose before touching the adjuster: the adjuster "
    "would only hide a leak.",
    proof="read the vacuum with a gauge at the modulator's own end of the hose",
    parts=(
        (
            "Signal hose",
            "Cracked, kinked, off its nipple, or so soft that the vacuum draws it flat. Bend it "
            "with the engine idling.",
        ),
        (
            "Hose clips and joints",
            "The gauge reads less at the modulator's end than at the manifold.",
        ),
        (
            "Manifold port",
            "Blocked with carbon: the gauge reads low at this port, full at another.",
        ),
        (
            "Modulator diaphragm",
            "Split: fluid in the signal hose, or the modulator does not hold a vacuum.",
        ),
        (
            "Modulator adjuster",
            "Turned in: the gauge reads full at the modulator and the shifts are late all the "
            "same.",
        ),
        (
            "Engine",
            "Low vacuum at the manifold itself: late ignition, valves, a leak, or altitude.",
        ),
    ),
    fault="Signal hose, port, modulator",
    at_most="A loss of more than about {most} would show in these readings.",
    lacking="A vacuum loss could not be judged: a measured shift has no window at full throttle.",
)

TIGHT_WORDS = ChangeWords(
    name="a throttle cable too tight by about {size}",
    unsized="a throttle cable that is too tight",
    means="A cable too tight by about {size} ({range}) fits: the unit takes the pedal to be "
    "further down than it is, so it shifts late and firmly at light throttle.",
    means_unsized="A cable that is too tight fits: the unit takes the pedal to be further down "
    "than it is, so it shifts late and firmly at light throttle.",
    proof="measure the cable's gap at idle, choke off and throttle shut",
    parts=(
        (
            "Throttle cable's gap",
            "Too small at idle, with the choke off and the throttle shut: the wire is pulled "
            "already.",
        ),
        ("Cable's bracket and clips", "Bent or moved, so that the sheath stands too far out."),
        ("Throttle cable itself", "One of another length, or hooked on wrongly at either end."),
        (
            "Throttle with the pedal on the floor",
            "A wire that is much too tight comes to its end before the throttle is fully open.",
        ),
    ),
    fault="Throttle cable too tight",
    at_most="Too tight by more than about {most} it would show in these readings.",
    lacking="A tight throttle cable could not be judged: a measured shift has no window at full "
    "throttle.",
)

SLACK_WORDS = ChangeWords(
    name="a throttle cable too slack by about {size}",
    unsized="a throttle cable that is too slack",
    means="A cable too slack by about {size} ({range}) fits: the unit takes the pedal to be "
    "further up than it is, so it shifts early and softly. The line pressure is then too low for "
    "the load, and clutches and bands slip and burn: stop driving until the cable is right.",
    means_unsized="A cable that is too slack fits: the unit takes the pedal to be further up than "
    "it is, so it shifts early and softly. The line pressure is then too low for the load, and "
    "clutches and bands slip and burn: stop driving until the cable is right.",
    proof="measure the cable's gap at idle and its travel to full throttle",
    parts=(
        ("Throttle cable's gap", "Too large at idle, or the wire off its hook."),
        (
            "Throttle cable's travel",
            "Too short to full throttle: the cable of another engine, or a throttle that does not "
            "open fully by a mat, the pedal or its stop.",
        ),
        (
            "Throttle valve and its lever",
            "The lever inside is loose or off, so that the wire moves and the valve does not.",
        ),
        (
            "Line pressure",
            "Too low as the wire is pulled: read it with a gauge before the unit pulls a load.",
        ),
    ),
    fault="Throttle cable too slack",
    at_most="Too slack by more than about {most} it would show in these readings.",
    lacking="A slack throttle cable could not be judged: a measured shift has no windows at full "
    "throttle and at one other.",
)

HANGS_WORDS = ChangeWords(
    name="a throttle cable that sticks about {size} out",
    unsized="a throttle cable that sticks pulled out",
    means="A wire that sticks about {size} out ({range}) and does not come back fits: the unit "
    "takes the pedal to be down when it is up. No setting cures it.",
    means_unsized="A wire that sticks pulled out fits: the unit takes the pedal to be down when it "
    "is up. No setting cures it.",
    proof="pull the wire out by hand and see whether it snaps back",
    parts=(
        (
            "Throttle cable's sheath",
            "Kinked, melted or tightly bent, or the wire frayed: it has to snap back by itself.",
        ),
        (
            "Throttle valve",
            "Sticks in its bore: the wire is free when it is unhooked, and hangs when hooked on.",
        ),
    ),
    fault="Throttle cable sticking pulled out",
    at_most="Sticking more than about {most} out it would show in these readings.",
    lacking="A sticking throttle cable could not be judged: a measured shift has no window at full "
    "throttle.",
)

WORDS = {
    "vacuum-loss": LOSS_WORDS,
    "cable-tight": TIGHT_WORDS,
    "cable-slack": SLACK_WORDS,
    "cable-hangs": HANGS_WORDS,
}
"""Words by the code of the explanation."""

CABLE_RULE = (
    "Measure the cable's gap at idle and its travel, and feel whether the wire snaps back. Set the "
    "cable by its gap, standing still, never by the shifts."
)
"""What comes before any adjustment of a cable."""


@frozen(kw_only=True)
class SharedWords:
    """What an explanation that any unit has calls the parts of this signal."""

    carrier: str
    kick_down: str
    kick_down_missing: str
    proof_full: str
    proof_kick_down: str
    full: str
    detent: tuple[Row, ...]
    kick_down_part: str


SHARED: Mapping[str, SharedWords] = {
    VACUUM: SharedWords(
        carrier="modulator",
        kick_down="its cable, rod or switch with the pedal on the floor",
        kick_down_missing="at the kick-down's cable, rod or switch",
        proof_full="unhook the kick-down and drive again",
        proof_kick_down="look at the kick-down's cable or switch with the pedal on the floor",
        full="Look for a kick-down or detent stuck on: its cable, rod, switch or valve.",
        detent=(
            ("Kick-down cable, rod or switch", "Set too short, bound, or stuck on."),
            (
                "Detent valve",
                "Stuck at full throttle in the valve body, though cable or switch lets go.",
            ),
        ),
        kick_down_part="Kick-down cable, rod or switch",
    ),
    CABLE: SharedWords(
        carrier="throttle cable",
        kick_down="whether the pedal on the floor pulls the wire past the kick-down's step",
        kick_down_missing="whether the pedal pulls the wire past the kick-down's step",
        proof_full="pull the wire out by hand and see whether it snaps back",
        proof_kick_down="see whether the pedal on the floor pulls the wire past the kick-down's "
        "step",
        full="Look for a wire that sticks pulled out to its end, and for a throttle or kick-down "
        "valve stuck on.",
        detent=(
            ("Throttle cable", "Sticks at its end: it has to snap back when it is let go."),
            (
                "Throttle valve and kick-down valve",
                "Stuck at full throttle in the valve body, though the wire comes back.",
            ),
        ),
        kick_down_part="Throttle cable's last part, or the kick-down's own rod or switch",
    ),
}  # fmt: skip
"""Words by the kind of the signal."""
