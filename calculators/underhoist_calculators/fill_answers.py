"""What a staged fill says: first fill, top-up or take-out, warnings, ledger and working."""

from attrs import frozen

from underhoist_calculators.answer import (
    Answer,
    Exact,
    Plate,
    Table,
    Working,
    exact,
    plate,
    with_exact,
)
from underhoist_calculators.filling import (
    GAP,
    READABLE,
    Sump,
    first_fill,
    jug,
    pours,
    volume_of,
)
from underhoist_calculators.fluid_choice import FluidChoice
from underhoist_calculators.fluid_expansion import correction_factor
from underhoist_calculators.units import Quantity, number_text, quantity, show, unit_name

FAR = quantity(20, "delta_degree_Celsius")
"""So far below the rule a reading is only a forecast. Common practice, no source."""

BESIDE = ("litre", "US_quart", "imperial_quart")
"""Units that stand beside a volume on its plate."""


@frozen(kw_only=True)
class Drained:
    """What came out, as it would measure at 15 °C, and in words how that is known."""

    volume: Quantity
    measured: bool
    how: Working


@frozen(kw_only=True)
class Stick:
    """A dipstick reading and what it comes to at the temperature of the level rule."""

    read: Quantity
    temperature: Quantity
    at: Quantity
    level: Quantity

    @property
    def missing(self) -> float:
        """Marks missing at the rule's temperature; below zero it is over."""
        return -self.level.m_as("mark_above_full")


@frozen(kw_only=True)
class Filled:
    """What went in so far, of which fluid, and the level before draining."""

    fluid: FluidChoice
    added: Quantity | None
    level_before: Quantity | None


def before_starting(sump: Sump, out: Drained, fluid: FluidChoice, selector: str | None) -> Answer:
    """Answer for the stage before the engine runs."""
    unit = unit_name(sump.service_fill)
    full = first_fill(out.volume, sump.service_fill)
    pour = jug(full, unit)
    working = Working(
        what="First fill",
        formula="first = out − the larger of 0.5 L and 10 % of out, at most the service fill",
        numbers=f"{show(out.volume, digits=2)} out, service fill {show(sump.service_fill)}",
        result=f"{show(full, unit, 2)}, poured as {show(pour)}",
    )
    note = "The rest follows by the dipstick."
    return Answer(
        summary=f"Put in {show(pour)} before starting, then fill by the dipstick.",
        plates=(with_exact(plate("Put in before starting", pour, others=BESIDE, note=note), full),),
        do=(*fluid.container, *_first_steps(pour, selector)),
        warnings=(*fluid.unknown, *_estimate_warning(out)),
        working=(out.how, working),
        values={"out": exact(out.volume), "first-fill": exact(full)},
    )


def _first_steps(pour: Quantity, selector: str | None) -> tuple[str, ...]:
    """Say how to get from the first fill to a reading."""
    rest = selector or "the position that the family page names"
    return (
        "Level ground, wheels chocked, parking brake on.",
        f"Put in {show(pour)}.",
        "Start the engine and let it idle. Hold the foot brake.",
        f"Move the selector slowly through every position, then to {rest}.",
        "Read the dipstick twice, wiped between, with the engine idling. The lower reading counts.",
        "Enter the reading and the fluid temperature here.",
    )


def _estimate_warning(out: Drained) -> tuple[str, ...]:
    if out.measured:
        return ()
    return (
        "What came out was not measured: this rests on a common share, not on this unit. "
        "Trust the dipstick, and measure next time.",
    )


def by_the_stick(sump: Sump, out: Drained, stick: Stick, filled: Filled) -> Answer:
    """Answer for a reading: top up, leave, or take out."""
    unit = unit_name(sump.service_fill)
    change = volume_of(stick.missing, stick.at, sump).to(unit)
    if stick.missing > READABLE:
        summary, plates, do = _top_up(stick, sump, unit)
        do = (*filled.fluid.container, *do) if plates else do
    elif stick.missing < -READABLE:
        summary, plates, do = _take_out(stick, sump, unit)
    else:
        summary, plates, do = _leave(stick)
    table, gap = _ledger(sump, out, filled, change)
    return Answer(
        summary=summary,
        plates=plates,
        do=do,
        tables=(table,),
        warnings=(
            *filled.fluid.unknown,
            *_reading_warnings(stick, sump),
            *_gap_warning(gap),
            *_estimate_warning(out),
        ),
        working=(out.how, *_stick_working(stick, sump, change)),
        values=_values(stick, out, change, gap),
    )


Said = tuple[str, tuple[Plate, ...], tuple[str, ...]]


def _top_up(stick: Stick, sump: Sump, unit: str) -> Said:
    """Say how much to add and in which steps."""
    steps = pours(stick.missing, stick.at, sump, unit)
    if not steps:
        return _leave(stick)
    total = sum(steps[1:], steps[0])
    shown = [show(step, digits=2) for step in steps]
    do = (
        *(f"Add {pour}, wait a minute, read again." for pour in shown[:-1]),
        f"Add {shown[-1]} and read again. Stop at the full mark, whatever this sheet says.",
        f"Drive until the fluid is between {show(sump.rule.low)} and {show(sump.rule.high)} "
        "and read once more: that reading decides.",
    )
    note = f"In {len(steps)} steps: {', '.join(shown)}." if len(steps) > 1 else "In one step."
    summary = (
        f"Add {show(total, digits=2)}: the level stands {_marks(stick.missing)} "
        f"below full at {show(stick.at)}."
    )
    wanted = volume_of(stick.missing, stick.at, sump)
    rounded = plate("Add now", total, others=BESIDE, digits=2, note=note)
    return summary, (with_exact(rounded, wanted),), do


def _marks(count: float) -> str:
    """Say a number of marks: "0.9 of a mark", "1.4 marks"."""
    number = number_text(abs(count), figures=2)
    if number == "1":
        return "1 mark"
    return f"{number} marks" if abs(count) > 1 else f"{number} of a mark"


def _take_out(stick: Stick, sump: Sump, unit: str) -> Said:
    """Say how much to take out, and why a little too much is not a little wrong."""
    # Measured warm as it comes out, so the volume at the fluid's own temperature.
    over_full = sump.between_marks * -stick.missing
    volume = jug(over_full, unit)
    if volume.magnitude == 0:
        return _leave(stick)
    shown, over = show(volume, digits=2), f"{_marks(stick.missing)} over full at {show(stick.at)}"
    why = "Above the mark the turning parts whip the fluid to foam: it slips, heats and blows out."
    between = f"between {show(sump.rule.low)} and {show(sump.rule.high)}"
    draw = f"Draw off {shown} through the filler tube or the plug."
    again = f"Read again {between}."
    is_cold = stick.temperature < sump.rule.low - FAR
    name = "Take out, if it still is" if is_cold else "Take out"
    rounded = plate(name, volume, others=BESIDE, digits=2, note=why)
    plates = (with_exact(rounded, over_full),)
    if is_cold:
        summary = f"Warm the fluid and read again: by this cold reading it will stand {over}."
        warm = f"Warm the fluid until it is {between} and read again."
        return summary, plates, (warm, draw, again)
    return f"Take out {shown}: {over}.", plates, (draw, again)


def _leave(stick: Stick) -> Said:
    words = f"Leave it: at {show(stick.at)} the level is at full, as near as a dipstick shows."
    return words, (), ("Read once more after the road test.",)


def _reading_warnings(stick: Stick, sump: Sump) -> tuple[str, ...]:
    """Warn of a reading that says less than it seems to."""
    told: list[str] = []
    if stick.read.m_as("mark_below_full") > 1:
        told.append(
            "Below the low mark the dipstick is a guess. Add the first step, then read again."
        )
    if not sump.rule.holds(stick.temperature):
        risen = stick.level.m_as("mark_above_full") - stick.read.m_as("mark_above_full")
        way = "rise" if risen > 0 else "fall"
        told.append(
            f"Read at {show(stick.temperature)}, outside the rule of {show(sump.rule.low)} to "
            f"{show(sump.rule.high)}: the level will {way} by {number_text(abs(risen), 2)} of a "
            "mark, and this is allowed for. Only a reading inside the rule decides."
        )
    return tuple(told)


def _stick_working(stick: Stick, sump: Sump, change: Quantity) -> tuple[Working, ...]:
    """Show the correction to the level rule and the volume that it comes to."""
    after = correction_factor(stick.at, sump.density)
    lines: list[Working] = []
    risen = quantity(0, "litre")
    if stick.temperature != stick.at:
        before = correction_factor(stick.temperature, sump.density)
        risen = sump.dry_fill * (1 / after - 1 / before)
        lines.append(
            Working(
                what=f"Rise from {show(stick.temperature)} to {show(stick.at)}",
                formula="rise = dry fill × (1 / VCF at the rule − 1 / VCF now)",
                numbers=f"{show(sump.dry_fill)} × "
                f"(1 / {number_text(after, 4)} − 1 / {number_text(before, 4)})",
                result=show(risen, digits=2),
            )
        )
    return (*lines, *_missing_working(stick, sump, risen, change))


def _missing_working(
    stick: Stick, sump: Sump, risen: Quantity, change: Quantity
) -> tuple[Working, Working]:
    """Show the marks that are missing and the volume that fills them."""
    missing = number_text(stick.missing, 2)
    factor = number_text(correction_factor(stick.at, sump.density), 4)
    return (
        Working(
            what="Missing at the rule's temperature",
            formula="missing = marks below full − rise / volume between the marks",
            numbers=f"{number_text(stick.read.m_as('mark_below_full'), 2)} − "
            f"{show(risen, digits=2)} / {show(sump.between_marks)}",
            result=f"{missing} marks",
        ),
        Working(
            what="Volume for that, as poured at 15 °C",
            formula="volume = missing × volume between the marks × VCF at the rule",
            numbers=f"{missing} × {show(sump.between_marks)} × {factor}",
            result=show(change, digits=2),
        ),
    )


def _ledger(
    sump: Sump, out: Drained, filled: Filled, change: Quantity
) -> tuple[Table, Quantity | None]:
    """Set in against out; the gap is known only where both were measured."""
    unit = unit_name(sump.service_fill)
    added, before = filled.added, filled.level_before
    missing = 0.0 if before is None else before.m_as("mark_below_full")
    short = volume_of(missing, sump.rule.low, sump)
    expected = out.volume + short
    rows = [("Came out" if out.measured else "Came out, estimated", show(out.volume, unit, 2))]
    if before is not None:
        rows.append(("Was missing before draining", show(short, unit, 2)))
    rows.append(("Should go in", show(expected, unit, 2)))
    gap = None
    if added is not None:
        total = added + change
        rows.append(("Has gone in", show(added, unit, 2)))
        rows.append(("Still to add" if change.magnitude >= 0 else "To take out",
                     show(abs(change), unit, 2)))  # fmt: skip
        rows.append(("In all", show(total, unit, 2)))
        gap = (total - expected).to(unit) if out.measured else None
        rows.append(("Gap, in less out", "not known" if gap is None else show(gap, unit, 2)))
    table = Table(title="Ledger, as at 15 °C", heads=("Entry", "Volume"), rows=tuple(rows))
    return table, gap


def _gap_warning(gap: Quantity | None) -> tuple[str, ...]:
    """Name a gap of more than 0.3 L and what can be behind it."""
    if gap is None or abs(gap) <= GAP:
        return ()
    if gap.magnitude > 0:
        return (
            f"{show(gap, digits=2)} more goes in than came out. Look for: it was low before, by a "
            "leak or by use; the cooler or the converter ran back while it stood open; fluid "
            "spilt or misread at the drain.",
        )
    return (
        f"{show(-gap, digits=2)} less goes in than came out. Look for: it was overfilled before; "
        "the converter or the cooler is not full yet; the stick was read with the engine stopped "
        "or with fluid drawn up the tube.",
    )


def _values(
    stick: Stick, out: Drained, change: Quantity, gap: Quantity | None
) -> dict[str, Exact | str]:
    values: dict[str, Exact | str] = {
        "out": exact(out.volume),
        "level-at-rule": exact(stick.level),
        "change": exact(change),
    }
    return {**values, "gap": exact(gap)} if gap is not None else values
