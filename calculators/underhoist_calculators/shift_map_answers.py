"""What a shift map says: summary, plates, advice, tables, warnings and working."""

from collections.abc import Callable, Iterator

from underhoist_calculators.answer import Exact, Plate, Table, Working, plate
from underhoist_calculators.governor import PlainWeight
from underhoist_calculators.shift_balance import Loss
from underhoist_calculators.shift_lines import Line, ShiftMap
from underhoist_calculators.units import number_text, quantity

CHECKED = 2
"""Windows that calibrate a shift; one more is a check."""


def _inhg(value: float) -> str:
    return f"{number_text(value, 1)} inHg"


def summary(given: ShiftMap) -> str:
    """Say which loss explains the measured shifts, or what the shown loss would do."""
    losses = given.losses
    if not losses:
        return _forecast(given)
    named = " and ".join(losses)
    if all(isinstance(loss, Loss) and loss.none for loss in losses.values()):
        return f"{named} came as the family's windows say; no vacuum loss is needed to explain it."
    common = given.common()
    if common is None:
        alone = " and ".join(shift for shift, loss in losses.items() if not isinstance(loss, Loss))
        return (
            f"Vacuum alone cannot explain {alone}."
            if alone
            else f"One vacuum loss cannot explain {named} together."
        )
    least, most = common
    if most < 0:
        return f"{named} came early: as if there were {_range(-most, -least)} more vacuum."
    return f"A vacuum loss of {_range(max(least, 0.0), most)} explains {named}."


def range_told(least: float, most: float, unit: str) -> str:
    """Write a range of levels, as one number where its ends read the same."""
    low, high = number_text(least, 1), number_text(most, 1)
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"


def _range(least: float, most: float) -> str:
    return range_told(least, most, "inHg")


def _forecast(given: ShiftMap) -> str:
    """Say what the shown loss does to the first shift at the highest vacuum of the windows."""
    line = given.lines[0]
    vacuum = given.levels[next(iter(line.windows))]
    was, comes = line.balance.speed(vacuum), line.balance.speed(vacuum - given.loss)
    if not given.loss:
        ceiling = given.speed(line.balance.ceiling)
        return (
            f"{line.shift} comes at {given.speed(was)} with {_inhg(vacuum)}, at {ceiling} without."
        )
    return (
        f"With {_inhg(given.loss)} lost of {_inhg(vacuum)}, {line.shift} comes at "
        f"{given.speed(comes)} instead of {given.speed(was)}."
    )


def plates(given: ShiftMap) -> tuple[Plate, ...]:
    """Give the loss that explains every reading best."""
    common = given.common()
    if common is None or common[1] < 0:
        return ()
    best = quantity(max(given.likeliest(common), 0.0), "conventional_inch_of_mercury")
    note = f"From {_range(max(common[0], 0.0), common[1])}, by how well a speed is read."
    return (plate("Vacuum lost", best, others=("kilopascal",), digits=1, note=note),)


def advice(given: ShiftMap) -> tuple[str, ...]:
    """Say what to prove first, and what the adjuster would hide."""
    common = given.common()
    if common is None:
        return _unexplained(given)
    best = given.likeliest(common)
    if common[0] <= 0 <= common[1]:
        return ()
    told = [
        "Read the vacuum with a gauge at the manifold and at the modulator's own end of the hose. "
        "The difference is the loss."
        if best > 0
        else "A leak cannot do this: it only makes shifts later. Look at the adjuster, the "
        "modulator and the governor."
    ]
    if common[1] >= given.source:
        told.append(
            "A kick-down stuck on gives the same speeds as no vacuum at all: look at its cable, "
            "rod or switch as well."
        )
    if given.turn is not None:
        told.append(_adjuster(given, best))
    return tuple(told)


def _adjuster(given: ShiftMap, loss: float) -> str:
    """Say how many turns would look the same, which way would hide it, and whether there are any.

    Turned in, the adjuster takes vacuum away: it raises and firms. A loss is hidden by turning out.
    """
    turns = abs(loss) / (given.turn or 1.0)
    was, mend = ("in", "out") if loss > 0 else ("out", "in")
    room = given.stop_out if mend == "out" else given.stop_in
    count = number_text(turns, 1)
    told = f"An adjuster turned {was} by {count} turns would look the same."
    effect = "lowers and softens" if mend == "out" else "raises and firms"
    if room is not None and turns > room:
        return (
            f"{told} Turning it {mend} cannot make up for it: that takes {count} turns and only "
            f"{number_text(room, 1)} are left. Beyond its stop the valve cannot travel."
        )
    prove = "Do not do it before the hose is proven: it would hide the leak."
    return (
        f"{told} Turning it {mend} by as much {effect} all shifts and would bring these back."
        f"{f' {prove}' if mend == 'out' else ''}"
    )


def _unexplained(given: ShiftMap) -> tuple[str, ...]:
    if not given.losses:
        return ()
    return (
        "Put the whole road test into shift-check: it compares a wrong speedometer, one bad valve "
        "and a stuck kick-down with a vacuum loss.",
    )


def tables(given: ShiftMap) -> tuple[Table, ...]:
    """Give what explains each reading, the map in figures, and what the adjuster does."""
    readings = readings_table(given, f"at {_inhg(given.source)}", _explained)
    return (*readings, *_map_tables(given), *_adjuster_table(given))


def _map_tables(given: ShiftMap) -> Iterator[Table]:
    """Write the speed of each shift by throttle: as specified, and with the loss."""
    cases = [("As specified", 0.0)]
    if given.loss:
        cases.append((f"{_inhg(given.loss)} lost", given.loss))
    heads = ("Throttle and vacuum", *(name for name, _ in cases))
    for line in given.lines:
        rows = tuple(
            (
                f"{throttle}, {number_text(vacuum, figures=3)} inHg",
                *(_speed(given, line, vacuum, loss) for _, loss in cases),
            )
            for throttle, vacuum in given.levels.items()
        )
        yield Table(title=f"{line.shift} against vacuum", heads=heads, rows=rows)


def _adjuster_table(given: ShiftMap) -> Iterator[Table]:
    """Write what one turn of the adjuster does at the highest vacuum of the windows."""
    if given.turn is None:
        return
    vacuum = max(given.levels.values())
    rows = tuple(
        (line.shift, *(_speed(given, line, vacuum, loss) for loss in (given.turn, -given.turn)))
        for line in given.lines
    )
    heads = ("Shift", "One turn in", "One turn out")
    yield Table(title=f"What the adjuster does at {_inhg(vacuum)}", heads=heads, rows=rows)


def _speed(given: ShiftMap, line: Line, vacuum: float, loss: float) -> str:
    """Write a speed, or that it lies beyond what is known."""
    balance = line.balance
    if vacuum - loss > balance.limit + 1e-9 and not balance.limit_is_cut_off:
        return "not known"
    return given.speed(balance.speed(vacuum - loss))


def readings_table(
    given: ShiftMap, where: str, explained: Callable[[ShiftMap, Line, Loss | str], str]
) -> Iterator[Table]:
    """Write what explains each measured shift, in the words of `explained`; none without any."""
    losses = given.losses
    if losses:
        by_name = {line.shift: line for line in given.lines}
        rows = tuple(
            (
                shift,
                given.speed(by_name[shift].measured or 0.0),
                given.speed(by_name[shift].balance.speed(given.source)),
                explained(given, by_name[shift], loss),
            )
            for shift, loss in losses.items()
        )
        heads = ("Shift", "Measured", "As specified", "What explains it")
        yield Table(title=f"What explains each shift, {where}", heads=heads, rows=rows)


def _explained(given: ShiftMap, line: Line, loss: Loss | str) -> str:
    """Say what explains one reading."""
    balance = line.balance
    if loss == "late":
        return (
            f"Vacuum alone cannot: later than {given.speed(balance.ceiling)}, which comes without "
            "any vacuum."
        )
    if not isinstance(loss, Loss):
        known = "where the modulator does nothing more"
        end = known if balance.limit_is_cut_off else "the last known point"
        return f"Vacuum alone cannot: earlier than {given.speed(balance.floor)}, {end}."
    if loss.none:
        return f"As specified, {_inhg(abs(loss.best))} either way of it."
    if loss.best > 0:
        told = f"A loss of {_inhg(loss.best)} ({_range(max(loss.least, 0.0), loss.most)})."
        return f"{told} All of it may be gone." if loss.most >= given.source else told
    return f"{_inhg(-loss.best)} more than there is ({_range(-loss.most, -loss.least)})."


def warnings(given: ShiftMap) -> tuple[str, ...]:
    """Name the half-throttle windows that the model misses, and what is not known."""
    told = list(missed(given))
    if given.turn is None:
        told.append("What a turn of the adjuster is worth is not written, so turns are not given.")
    elif given.stop_in is None or given.stop_out is None:
        told.append(
            "The adjuster has a stop either way, beyond which the valve cannot travel. Its turns "
            "are not written, so whether they suffice is not known."
        )
    return tuple(told)


def missed(given: ShiftMap) -> Iterator[str]:
    """Check the model at the window that did not calibrate it."""
    for line in given.lines:
        if len(line.windows) > CHECKED:
            throttle = list(line.windows)[1]
            low, high = line.windows[throttle]
            speed = line.balance.speed(given.levels[throttle])
            if not low <= speed <= high:
                yield (
                    f"The model gives {given.speed(speed)} for {line.shift} at {throttle} "
                    f"throttle, outside the family's {given.number(low)} to {given.speed(high)}. "
                    "Try the governor's own points."
                )


def working(given: ShiftMap) -> tuple[Working, ...]:
    """Show the calibration of each shift and the inverse for each reading."""
    return tuple(step for line in given.lines for step in _steps(given, line))


def _steps(given: ShiftMap, line: Line) -> Iterator[Working]:
    balance = line.balance
    plain = isinstance(balance.governor, PlainWeight)
    law = "N²" if plain else "Pg(N)"
    yield Working(
        what=f"{line.shift} through its known points",
        formula=f"{law} = α − β·V, N in km/h, V in inHg" + ("" if plain else ", Pg in kPa"),
        numbers=", ".join(
            f"{number_text(sum(w) / 2, 1)} km/h at {_inhg(given.levels[t])}"
            for t, w in line.windows.items()
            if t in (next(iter(line.windows)), list(line.windows)[-1])
        ),
        result=f"α = {number_text(balance.alpha, figures=6)}, "
        f"β = {number_text(balance.beta, figures=6)}",
    )
    if line.measured is None or not isinstance(given.losses[line.shift], Loss):
        return
    pressure = number_text(balance.governor.pressure(line.measured), figures=6)
    yield Working(
        what=f"Loss that explains {line.shift}",
        formula=f"loss = V source − (α − {law}) / β",
        numbers=f"{number_text(given.source, 1)} − ({number_text(balance.alpha, figures=6)} − "
        f"{pressure}) / {number_text(balance.beta, figures=6)}",
        result=_inhg(given.source - balance.vacuum(line.measured)),
    )


def values(given: ShiftMap) -> dict[str, Exact | str]:
    """Give what others compute on: calibration, loss and turns."""
    found: dict[str, Exact | str] = {}
    for line in given.lines:
        balance = line.balance
        ends = {"ceiling": balance.ceiling, "floor": balance.floor}
        ends["with_loss"] = balance.speed(max(given.levels.values()) - given.loss)
        for name, speed in ends.items():
            found[f"{line.shift}_{name}"] = Exact(speed, "kilometre_per_hour")
    for shift, loss in given.losses.items():
        is_loss = isinstance(loss, Loss)
        found[f"{shift}_loss"] = (
            Exact(loss.best, "conventional_inch_of_mercury") if is_loss else loss
        )
        if is_loss and given.turn is not None:
            found[f"{shift}_turns_in"] = Exact(loss.best / given.turn, "turn")
    return found
