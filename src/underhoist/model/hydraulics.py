"""What shifts a family's gears: the modulator, and the governor where it has points of its own."""

from attrs import field, frozen

from underhoist.model.values import Pressure, Speed
from underhoist.place import Placed


@frozen(kw_only=True)
class Modulator:
    """The vacuum modulator's figures; turning its adjuster in raises and firms all shifts."""

    turn: Placed[Pressure] = field(
        metadata={"help": "Vacuum that makes the same change as one turn, e.g. 0.6 inHg."}
    )
    cut_off: Placed[Pressure] | None = field(
        default=None,
        metadata={"help": "Vacuum above which shifts come no earlier, e.g. 17 inHg."},
    )


@frozen(kw_only=True)
class GovernorPoint:
    """One point of a spring-calibrated governor."""

    speed: Placed[Speed] = field(metadata={"help": "Road speed, e.g. 40 km/h."})
    pressure: Placed[Pressure] = field(metadata={"help": "Governor pressure there, e.g. 20 psi."})


@frozen(kw_only=True)
class Governor:
    """The governor's own points; a plain weight, whose pressure is as speed squared, needs none."""

    points: tuple[GovernorPoint, ...] = field(metadata={"help": "Speeds and pressures, rising."})
