"""Universal-joint angles: what each joint does to the speed, and what two leave of it."""

from attrs import frozen

from underhoist_calculators.answer import Answer, Exact, Plate, Table, Working, plate
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.joints import (
    Bend,
    JointError,
    bend,
    extremes,
    fluctuation,
    greatest_lead,
    residual,
    small_angles,
)
from underhoist_calculators.units import Quantity, number_text, quantity

STEEP = 15.0
"""Degrees above which a plain joint of a road vehicle wears fast: common practice, no source."""


@frozen(kw_only=True)
class Shaft:
    """A shaft between two joints, or behind a single one."""

    first: Bend
    second: Bend | None
    out_of_line: float
    left: float
    allowed: float
    speed: Quantity


def run(inputs: Inputs) -> Answer:
    """Answer for one propeller shaft."""
    shaft = _shaft(inputs)
    return Answer(
        summary=_summary(shaft),
        plates=_plates(shaft),
        do=_advice(shaft),
        tables=(_table(shaft),),
        warnings=_warnings(shaft),
        working=_working(inputs, shaft),
        values={
            "first": Exact(shaft.first.angle, "degree"),
            **({"second": Exact(shaft.second.angle, "degree")} if shaft.second else {}),
            "residual": Exact(shaft.left, "degree"),
            "fluctuation": Exact(100 * fluctuation(shaft.left), "percent"),
            "verdict": "even" if shaft.left <= shaft.allowed else "uneven",
        },
    )


def _shaft(inputs: Inputs) -> Shaft:
    """Gather both joints; without a second one the first is what is left."""
    first = _bend(inputs, "first")
    second = None if inputs.maybe("second-side") is None else _bend(inputs, "second")
    if second is None and inputs.maybe("second-top") is not None:
        wrong = "The second joint has a top view but no side view."
        raise EntryError("second-side", wrong, "Write 0° if it is straight in the side view.")
    out_of_line = inputs.quantity("yokes").m_as("degree")
    return Shaft(
        first=first,
        second=second,
        out_of_line=out_of_line,
        left=residual(first, second, out_of_line) if second else first.angle,
        allowed=inputs.quantity("allowed").m_as("degree"),
        speed=inputs.quantity("speed"),
    )


def _bend(inputs: Inputs, joint: str) -> Bend:
    """Give one joint's true angle; raises `EntryError` where it cannot turn."""
    side, top = inputs.quantity(f"{joint}-side"), inputs.maybe(f"{joint}-top")
    try:
        return bend(side.m_as("degree"), top.m_as("degree") if top is not None else 0.0)
    except JointError:
        wrong = "At 90° the joint cannot turn."
        raise EntryError(f"{joint}-side", wrong, "Write the angle between the shafts.") from None


def _degrees(value: float, digits: int = 1) -> str:
    return f"{number_text(value, digits)}°"


def _percent(angle: float) -> str:
    """Write the fluctuation of a joint angle, highest less lowest speed."""
    return f"{number_text(100 * fluctuation(angle), 2)} %"


def _summary(shaft: Shaft) -> str:
    left, within = _degrees(shaft.left), shaft.left <= shaft.allowed
    verdict = "within" if within else "more than"
    if shaft.second is None:
        return f"One joint at {left} alone: {verdict} the {_degrees(shaft.allowed)} allowed."
    return (
        f"The two joints leave the unevenness of one joint at {left}, {verdict} the "
        f"{_degrees(shaft.allowed)} allowed."
    )


def _plates(shaft: Shaft) -> tuple[Plate, ...]:
    left = plate(
        "Angle left over", quantity(shaft.left, "degree"), digits=1,
        note=f"Speed fluctuation {_percent(shaft.left)} of the shaft's speed.",
    )  # fmt: skip
    first = plate("First joint", quantity(shaft.first.angle, "degree"), digits=1)
    if shaft.second is None:
        return (left,)
    return left, first, plate("Second joint", quantity(shaft.second.angle, "degree"), digits=1)


def _advice(shaft: Shaft) -> tuple[str, ...]:
    """Say what would even the shaft out, the yokes first."""
    if shaft.left <= shaft.allowed:
        return ()
    if shaft.second is None:
        return ("Make the angle smaller, or fit a second joint at the same angle.",)
    told: list[str] = []
    in_line = residual(shaft.first, shaft.second)
    if shaft.out_of_line and in_line < shaft.left:
        told.append(f"Put the yokes of the middle shaft in line: that leaves {_degrees(in_line)}.")
    if abs(shaft.first.angle - shaft.second.angle) > 0.5:
        told.append(
            "Make both angles alike with shims under the mount or wedges at the axle, loaded as "
            "it is driven."
        )
    if not told:
        told.append("Bring both joints into one plane: move the mount sideways.")
    return tuple(told)


def _table(shaft: Shaft) -> Table:
    """Write what each joint does on its own, and what is left."""
    joints = [("First joint", shaft.first.angle)]
    if shaft.second is not None:
        joints += [("Second joint", shaft.second.angle), ("Both together", shaft.left)]
    rows = tuple((name, *_row(shaft, angle)) for name, angle in joints)
    heads = ("Joint", "True angle", "Slowest", "Fastest", "Fluctuation", "Greatest lead")
    turning = number_text(shaft.speed.m_as("revolution_per_minute"), 0)
    return Table(title=f"Behind a shaft at {turning} r/min", heads=heads, rows=rows)


def _row(shaft: Shaft, angle: float) -> tuple[str, ...]:
    speed = shaft.speed.m_as("revolution_per_minute")
    slow, fast = (f"{number_text(speed * share, 0)} r/min" for share in extremes(angle))
    return _degrees(angle, 2), slow, fast, _percent(angle), _degrees(greatest_lead(angle), 2)


def _warnings(shaft: Shaft) -> tuple[str, ...]:
    told: list[str] = []
    angles = [shaft.first.angle, *([shaft.second.angle] if shaft.second else [])]
    if max(angles) > STEEP:
        told.append(f"A plain joint above {_degrees(STEEP, 0)} wears fast.")
    if shaft.second is not None and max(angles) > shaft.allowed:
        told.append(
            "The middle shaft itself turns unevenly whatever the second joint does: keep both "
            "angles small."
        )
    if min(angles) == 0:
        told.append("A joint without any angle does not turn its needles: they mark its cross.")
    return tuple(told)


def _working(inputs: Inputs, shaft: Shaft) -> tuple[Working, ...]:
    joints = [("first", shaft.first)] + ([("second", shaft.second)] if shaft.second else [])
    lines = [_true_angle(inputs, name, joint) for name, joint in joints]
    if shaft.second is not None:
        lines.append(_left(shaft, shaft.second))
    extreme = Working(
        what="Speed fluctuation left",
        formula="1 / cos β − cos β = tan β · sin β",
        numbers=f"tan {_degrees(shaft.left, 2)} · sin {_degrees(shaft.left, 2)}",
        result=_percent(shaft.left),
    )
    return (*lines, extreme)


def _true_angle(inputs: Inputs, name: str, joint: Bend) -> Working:
    side, top = inputs.quantity(f"{name}-side"), inputs.maybe(f"{name}-top")
    shown = [_degrees(v.m_as("degree"), 1) if v is not None else "0°" for v in (side, top)]
    return Working(
        what=f"True angle of the {name} joint",
        formula="tan β = √(tan² side + tan² top)",
        numbers=f"√(tan² {shown[0]} + tan² {shown[1]})",
        result=_degrees(joint.angle, 2),
    )


def _left(shaft: Shaft, second: Bend) -> Working:
    """Show the closed form where the yokes are in line and one plane holds all shafts."""
    turned = shaft.out_of_line + second.plane - shaft.first.plane
    one, two = _degrees(shaft.first.angle, 2), _degrees(second.angle, 2)
    if turned % 180 == 0:
        rough = _degrees(small_angles(shaft.first.angle, second.angle), 2)
        return Working(
            what="Angle left over, yokes in line, one plane",
            formula="cos β = cos larger / cos smaller; for small angles √|β₁² − β₂²|",
            numbers=f"{one} and {two}; the short formula gives {rough}",
            result=_degrees(shaft.left, 2),
        )
    return Working(
        what="Angle left over",
        formula="cos β = s − √(s² − 1), s = (c₁²·cos²δ + sin²δ + c₁²·c₂²·sin²δ + c₂²·cos²δ) "
        "/ (2·c₁·c₂)",
        numbers=f"c₁ = cos {one}, c₂ = cos {two}, δ = {_degrees(turned, 1)}",
        result=_degrees(shaft.left, 2),
    )


ONE, TWO, CONVENTION = "First joint", "Second joint", "Convention"


def _side(joint: str, group: str, *, example: str, required: bool) -> Field:
    return Field(
        name=f"{joint}-side", label="Angle in the side view", group=group, kind="angle",
        units=("degree",), low="-90°", high="90°", required=required, example=example,
        help="Between the two shafts: the difference of two inclinometer readings, vehicle loaded "
        "as driven.",
    )  # fmt: skip


def _top(joint: str, group: str) -> Field:
    return Field(
        name=f"{joint}-top", label="Angle in the top view", group=group, kind="angle",
        units=("degree",), low="-90°", high="90°", required=False,
        help="Where the shaft also runs sideways. The same sign for the same side.",
    )  # fmt: skip


CALCULATOR = Calculator(
    name="joint-angles",
    title="Joint angles",
    purpose="Gives the speed fluctuation of universal joints, and what two joints leave of it.",
    group="Shift",
    fields=(
        _side("first", ONE, example="7°", required=True),
        _top("first", ONE),
        _side("second", TWO, example="5°", required=False),
        _top("second", TWO),
        Field(
            name="yokes", label="Yokes out of line by", group=TWO, kind="angle",
            units=("degree",), low="-90°", high="90°", default="0°",
            help="How far the two yokes of the middle shaft are twisted against each other.",
        ),
        Field(
            name="allowed", label="Angle that may be left", group=CONVENTION, kind="angle",
            units=("degree",), low="0°", high="15°", default="3°",
            help="As one joint alone. 3° is common practice, no source.",
        ),
        Field(
            name="speed", label="Shaft speed", group=CONVENTION, kind="rotation_speed",
            units=("revolution_per_minute",), low="1 rpm", high="9000 rpm", default="3000 rpm",
            help="Only for the speeds in the table.",
        ),
    ),
    sources=(
        "Universal joint: ω₂/ω₁ = cos β / (1 − sin² β · cos² γ), between cos β and 1/cos β; exact. "
        "γ counts so that tan γ₁ = cos β · tan γ₂; from the other fork it starts 90° later.",
        "Two joints cancel with equal angles, yokes in line and all shafts in one plane, or in "
        "mirrored planes.",
        "Angle left over: singular values of the two joints' product, exact for any plane; in one "
        "plane cos β = cos β₁ / cos β₂.",
    ),
    limits=(
        "Rigid shafts and joints without play. What is felt also grows with the square of the "
        "speed and with the shaft's length.",
        "A constant-velocity joint has no fluctuation; leave it out.",
    ),
    folded=(CONVENTION,),
    run=run,
)  # fmt: skip
