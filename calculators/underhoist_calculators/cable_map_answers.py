"""What a shift map of a throttle cable says; a loss of the wire to come is a cable too tight."""

from collections.abc import Iterator

from underhoist_calculators.answer import Answer, Exact, Plate, Table, Working, plate
from underhoist_calculators.cable_answers import turns_told
from underhoist_calculators.governor import PlainWeight
from underhoist_calculators.shift_balance import Loss
from underhoist_calculators.shift_lines import Line, ShiftMap
from underhoist_calculators.shift_map_answers import missed, range_told, readings_table
from underhoist_calculators.shift_plot import Axis, draw
from underhoist_calculators.shift_signal_words import CABLE_RULE
from underhoist_calculators.units import number_text, quantity

BURNS = (
    "Stop driving until the cable is right: the line pressure is too low for the load, and "
    "clutches and bands slip and burn."
)
STICKS = (
    "A wire that sticks pulled out makes light throttle late in the same way, and no setting cures "
    "it: pull it out by hand and see whether it snaps back."
)
EXTENT = 10
"""mm between the numbers on the wire's axis."""


def answer(given: ShiftMap) -> Answer:
    """Answer for one family with a throttle cable and one vehicle."""
    return Answer(
        summary=_summary(given),
        plates=_plates(given),
        do=_advice(given),
        tables=(*_readings(given), *_map_tables(given), *_adjuster_table(given)),
        warnings=_warnings(given),
        working=tuple(step for line in given.lines for step in _steps(given, line)),
        values=_values(given),
        picture=draw(given, _axis(given)),
    )


def _mm(value: float) -> str:
    return f"{number_text(value, 1)} mm"


def _off(value: float) -> str:
    """Write how a cable is off; above zero it is too tight."""
    return f"{_mm(abs(value))} too {'tight' if value > 0 else 'slack'}"


def _ends(least: float, most: float) -> str:
    """Write both ends of what explains a reading."""
    if least >= 0:
        return f"{range_told(least, most, 'mm')} too tight"
    if most <= 0:
        return f"{range_told(-most, -least, 'mm')} too slack"
    return f"{_off(least)} to {_off(most)}"


def _summary(given: ShiftMap) -> str:
    """Say which cable explains the measured shifts, or what the shown one would do."""
    losses = given.losses
    if not losses:
        return _forecast(given)
    named = " and ".join(losses)
    if all(isinstance(loss, Loss) and loss.none for loss in losses.values()):
        return f"{named} came as the family's windows say; the cable explains nothing more."
    common = given.common()
    if common is None:
        alone = " and ".join(shift for shift, loss in losses.items() if not isinstance(loss, Loss))
        return (
            f"The cable alone cannot explain {alone}."
            if alone
            else f"One setting of the cable cannot explain {named} together."
        )
    return f"A cable {_ends(*common)} explains {named}."


def _forecast(given: ShiftMap) -> str:
    """Say what the shown cable does at half throttle, where both ways are known."""
    line, half = given.lines[0], given.levels["half"]
    was = given.speed(line.balance.speed(half))
    if not given.loss:
        return f"{line.shift} comes at {was} at half throttle."
    comes = _speed(given, line, half, given.loss)
    return (
        f"With the cable {_off(given.loss)}, {line.shift} at half throttle comes at {comes} "
        f"instead of {was}."
    )


def _plates(given: ShiftMap) -> tuple[Plate, ...]:
    """Give the setting that explains every reading best."""
    common = given.common()
    if common is None or common[0] <= 0 <= common[1]:
        return ()
    best = given.likeliest(common)
    note = f"{_ends(*common)}, by how well a speed is read."
    name = f"Cable too {'tight' if best > 0 else 'slack'} by"
    return (plate(name, quantity(abs(best), "millimetre"), others=("inch",), digits=1, note=note),)


def _advice(given: ShiftMap) -> tuple[str, ...]:
    """Say what to measure, what it does meanwhile, and how many turns it is worth."""
    common = given.common()
    if common is None:
        return (
            (
                "Put the whole road test into shift-check: it compares a wrong speedometer, one "
                "bad valve and a wire that sticks with a cable wrongly set.",
            )
            if given.losses
            else ()
        )
    least, most = common
    if least <= 0 <= most:
        return ()
    best = given.likeliest(common)
    told = [STICKS if best > 0 else BURNS, CABLE_RULE]
    if given.turn is not None:
        ends = sorted((abs(least), abs(most)))
        told.append(turns_told(ends[0], abs(best), ends[1], given.turn))
    return tuple(told)


def _map_tables(given: ShiftMap) -> Iterator[Table]:
    """Write the speed of each shift by throttle: as specified, and with the shown cable."""
    cases = [("As specified", 0.0)]
    if given.loss:
        cases.append((_off(given.loss), given.loss))
    heads = ("Throttle and wire", *(name for name, _ in cases))
    for line in given.lines:
        rows = tuple(
            (
                f"{throttle}, {_mm(given.whole - level)} out",
                *(_speed(given, line, level, off) for _, off in cases),
            )
            for throttle, level in given.levels.items()
        )
        yield Table(title=f"{line.shift} against the wire", heads=heads, rows=rows)


def _adjuster_table(given: ShiftMap) -> Iterator[Table]:
    """Write what one turn of the adjuster does at half throttle, where both ways are known."""
    if given.turn is None:
        return
    half = given.levels["half"]
    rows = tuple(
        (line.shift, *(_speed(given, line, half, off) for off in (given.turn, -given.turn)))
        for line in given.lines
    )
    heads = ("Shift", "One turn tighter", "One turn slacker")
    yield Table(title="What the adjuster does at half throttle", heads=heads, rows=rows)


def _speed(given: ShiftMap, line: Line, level: float, off: float) -> str:
    """Write a speed, or that it lies below what is known."""
    if level - off > line.balance.limit + 1e-9:
        return "not known"
    return given.speed(line.balance.speed(level - off))


def _readings(given: ShiftMap) -> Iterator[Table]:
    """Write for each measured shift the cable that explains it."""
    return readings_table(given, f"the wire {_mm(given.whole - given.source)} out", _explained)


def _explained(given: ShiftMap, line: Line, loss: Loss | str) -> str:
    """Say what explains one reading."""
    if loss == "late":
        ceiling = given.speed(line.balance.ceiling)
        return f"The cable alone cannot: later than {ceiling}, which comes at full throttle."
    if not isinstance(loss, Loss):
        return (
            f"Not known: earlier than {given.speed(line.balance.floor)}, the last known point. "
            "Measure it at half throttle."
        )
    if loss.none:
        return f"As specified, {_mm(abs(loss.best))} either way of it."
    return f"A cable {_off(loss.best)} ({_ends(loss.least, loss.most)})."


def _warnings(given: ShiftMap) -> tuple[str, ...]:
    """Say what the map rests on, and which windows it misses."""
    light, half, full = (number_text(given.whole - given.levels[t], 1) for t in given.levels)
    told = [
        f"The wire is taken to be {light} mm out at light throttle, {half} mm at half and {full} "
        "mm at full, and the throttle pressure to rise with it in a straight line and to be "
        "greatest at full throttle. A cable that is too tight then moves nothing at full throttle.",
        *missed(given),
    ]
    if given.turn is None:
        told.append("What a turn of the adjuster moves is not written, so turns are not given.")
    return tuple(told)


def _steps(given: ShiftMap, line: Line) -> Iterator[Working]:
    """Show the calibration of a shift and the inverse for its reading."""
    balance = line.balance
    law = "N²" if isinstance(balance.governor, PlainWeight) else "Pg(N)"
    alpha, beta = (number_text(each, figures=6) for each in (balance.alpha, balance.beta))
    ends = (next(iter(line.windows)), list(line.windows)[-1])
    yield Working(
        what=f"{line.shift} through its known points",
        formula=f"{law} = α − β·s, N in km/h, s the wire still to come, mm",
        numbers=", ".join(
            f"{number_text(sum(line.windows[t]) / 2, 1)} km/h at {_mm(given.levels[t])}"
            for t in ends
        ),
        result=f"α = {alpha}, β = {beta}",
    )
    if line.measured is not None and isinstance(given.losses[line.shift], Loss):
        pressure = number_text(balance.governor.pressure(line.measured), figures=6)
        yield Working(
            what=f"Too tight by, that explains {line.shift}",
            formula=f"tight = s − (α − {law}) / β",
            numbers=f"{number_text(given.source, 1)} − ({alpha} − {pressure}) / {beta}",
            result=_mm(given.source - balance.vacuum(line.measured)),
        )


def _values(given: ShiftMap) -> dict[str, Exact | str]:
    """Give what others compute on: ends of each shift, millimetres too tight, turns too tight."""
    found: dict[str, Exact | str] = {}
    for line in given.lines:
        ends = {"ceiling": line.balance.ceiling, "floor": line.balance.floor}
        for name, speed in ends.items():
            found[f"{line.shift}_{name}"] = Exact(speed, "kilometre_per_hour")
    for shift, loss in given.losses.items():
        found[f"{shift}_tight"] = Exact(loss.best, "millimetre") if isinstance(loss, Loss) else loss
        if isinstance(loss, Loss) and given.turn is not None:
            found[f"{shift}_turns_tight"] = Exact(loss.best / given.turn, "turn")
    return found


def _axis(given: ShiftMap) -> Axis:
    """Give the axis of the wire, opening the throttle to the right."""
    return Axis(
        title="Shift speed against the wire of the throttle cable",
        caption="Throttle and wire pulled out, mm",
        told=_described(given),
        changed=_off(given.loss),
        widest=given.whole,
        step=EXTENT if given.whole > 3 * EXTENT else EXTENT // 2,
        turned=True,
    )


def _described(given: ShiftMap) -> str:
    """Say in words what the drawing shows."""
    told = [
        f"{line.shift}: {given.speed(line.balance.floor)} with the wire "
        f"{_mm(given.whole - line.balance.limit)} out, rising to "
        f"{given.speed(line.balance.ceiling)} at {_mm(given.whole)}."
        for line in given.lines
    ]
    if given.loss:
        told.append(f"Broken lines: the cable {_off(given.loss)}.")
    told += [
        f"Measured: {line.shift} at {given.speed(line.measured)}, the wire "
        f"{_mm(given.whole - given.source)} out."
        for line in given.lines
        if line.measured is not None
    ]
    return " ".join(told)
