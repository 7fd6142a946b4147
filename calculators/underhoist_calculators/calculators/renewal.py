"""How much of the fluid is new after partial changes, and how many a wanted share takes."""

from attrs import frozen

from underhoist_calculators.answer import Answer, Exact, Plate, Table, Working, exact, plate
from underhoist_calculators.counts import count
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.fluid_fields import FAMILY, VOLUMES
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.mixing import MOST, changes_for, new_share
from underhoist_calculators.units import Quantity, number_text, show, unit_name


@frozen(kw_only=True)
class Change:
    """One partial change: what comes out of how much, and how often it is done."""

    drained: Quantity
    total: Quantity
    times: int

    @property
    def share(self) -> float:
        """Give the share of the fluid that one change renews."""
        return (self.drained / self.total).m_as("dimensionless")


def run(inputs: Inputs) -> Answer:
    """Answer for a wanted share, or for so many changes."""
    change = _change(inputs)
    wanted = inputs.maybe("wanted")
    share = new_share(change.share, change.times)
    used = change.drained * change.times
    return Answer(
        summary=_summary(change, share, used, wanted),
        plates=(_share_plate(share, change.times), _used_plate(used, change)),
        tables=(_table(change),),
        warnings=_warnings(change, share),
        working=_working(change, wanted),
        values={
            "changes": Exact(change.times, "dimensionless"),
            "new-share": Exact(share * 100, "percent"),
            "used": exact(used),
        },
    )


def _change(inputs: Inputs) -> Change:
    """Gather the entries; raises `EntryError` where they make no change."""
    drained, total = inputs.quantity("drained"), inputs.quantity("dry-fill")
    if drained > total:
        wrong = f"{show(drained)} is more than the whole unit holds, {show(total)}."
        mend = "Compare with the dry fill, not with the service fill."
        raise EntryError("drained", wrong, mend)
    once = Change(drained=drained, total=total, times=1)
    wanted, times = inputs.maybe("wanted"), count(inputs, "changes")
    if wanted is not None and times is not None:
        wrong = "A wanted share and a number of changes are both written."
        raise EntryError("changes", wrong, "Empty one of them.")
    if wanted is not None:
        return Change(drained=drained, total=total, times=_enough(once.share, wanted))
    if times is None:
        wrong = "Neither a wanted share nor a number of changes is written."
        raise EntryError("wanted", wrong, "Write 90 %, or a number of changes.")
    return Change(drained=drained, total=total, times=times)


def _enough(share: float, wanted: Quantity) -> int:
    """Give the changes for a share; raises `EntryError` where nobody would do so many."""
    if wanted.m_as("dimensionless") >= 1:
        wrong = "Mixing never brings the new fluid to 100 %."
        raise EntryError("wanted", wrong, "Write 95 %, or have the unit emptied and refilled.")
    times = changes_for(share, wanted.m_as("dimensionless"))
    if times > MOST:
        wrong = f"{show(wanted)} would take {times} changes."
        mend = f"Write a share that {MOST} changes reach, or drain more at a time."
        raise EntryError("wanted", wrong, mend)
    return times


def _percent(share: float, digits: int = 0) -> str:
    return f"{number_text(share * 100, digits)} %"


def _times(times: int) -> str:
    return f"{times} change" if times == 1 else f"{times} changes"


def _summary(change: Change, share: float, used: Quantity, wanted: Quantity | None) -> str:
    makes = "makes" if change.times == 1 else "make"
    reach = "" if wanted is None else f", the fewest for {show(wanted)}"
    fluid = show(used, digits=1)
    return f"{_times(change.times)} {makes} {_percent(share)} new{reach}, with {fluid} of fluid."


def _share_plate(share: float, times: int) -> Plate:
    return Plate(
        name=f"New after {_times(times)}",
        number=number_text(share * 100, 0),
        unit="per cent",
        note=f"Old fluid left: {_percent(1 - share)}.",
        exact=Exact(share * 100, "percent"),
    )


def _used_plate(used: Quantity, change: Change) -> Plate:
    others = tuple(unit for unit in ("litre", "US_quart", "imperial_quart"))
    note = f"{_times(change.times)} of {show(change.drained)}. All of it is waste afterwards."
    return plate("Fluid used", used, others=others, digits=1, note=note)


def _table(change: Change) -> Table:
    """Show one change more than asked for, so that its gain can be weighed."""
    unit = unit_name(change.drained)
    rows = tuple(
        (_times(times), _percent(new_share(change.share, times)),
         show(change.drained * times, unit, 1))
        for times in range(1, min(change.times + 1, MOST) + 1)
    )  # fmt: skip
    return Table(title="Change by change", heads=("After", "New", "Fluid used"), rows=rows)


def _warnings(change: Change, share: float) -> tuple[str, ...]:
    """Warn where new fluid is mostly poured away again."""
    used = change.share * change.times
    if used <= 2 or share > 0.999:
        return ()
    return (
        f"This uses {number_text(used, figures=2)} times what the unit holds. Draining the "
        "converter as well takes fewer changes.",
    )


def _working(change: Change, wanted: Quantity | None) -> tuple[Working, ...]:
    r = number_text(change.share, figures=4)
    lines = [
        Working(
            what="Share changed at a time",
            formula="r = drained / dry fill",
            numbers=f"{show(change.drained)} / {show(change.total)}",
            result=r,
        )
    ]
    if wanted is not None:
        share = number_text(wanted.m_as("dimensionless"))
        lines.append(
            Working(
                what="Changes needed",
                formula="n = ln(1 − w) / ln(1 − r), rounded up",
                numbers=f"ln(1 − {share}) / ln(1 − {r})" if change.share < 1 else "all at once",
                result=str(change.times),
            )
        )
    lines.append(
        Working(
            what="New after them",
            formula="new = 1 − (1 − r)ⁿ",
            numbers=f"1 − (1 − {r})^{change.times}",
            result=_percent(new_share(change.share, change.times), 2),
        )
    )
    return tuple(lines)


WANTED = "What is wanted"

CALCULATOR = Calculator(
    name="renewal",
    title="Fluid renewal",
    purpose="Gives the share of new fluid after partial changes, and how many a wanted share "
    "takes.",
    group="Fluid",
    folded=(FAMILY,),
    fields=(
        Field(
            name="wanted", label="Share of new fluid wanted", group=WANTED, kind="ratio",
            required=False, units=("percent",), help="Or leave it empty and write the changes.",
            low="1 %", high="100 %", example="90 %",
        ),
        Field(
            name="changes", label="Number of changes", group=WANTED, kind="count", required=False,
            help="Or leave it empty and write the share.", low="1",
            high=str(MOST),
        ),
        Field(
            name="drained", label="Drained at each change", group=FAMILY, kind="volume",
            help="What comes out and goes in at one change.", units=VOLUMES, low="0.1 L",
            high="30 L", example="4.2 L", fills_from="fluid.service_fill",
        ),
        Field(
            name="dry-fill", label="Dry fill", group=FAMILY, kind="volume", units=VOLUMES,
            help="What the empty unit with its converter takes, not the service fill.",
            low="1 L", high="30 L", example="8.6 L", fills_from="fluid.dry_fill",
        ),
    ),
    sources=("Perfect mixing: the old share after n changes is (1 − r)ⁿ, by definition.",),
    limits=(
        "The fluid is taken to mix fully between changes: drive it warm through every gear. "
        "Without that the share is less.",
        "Shares are shown to whole per cent, finer than a drained volume is known.",
        f"More than {MOST} changes are refused: nobody does them.",
        "It says nothing of whether two fluids may be mixed: the family page does.",
    ),
    run=run,
)  # fmt: skip
