"""What a calculator gives back: rounded for the eye, exact for whatever computes on."""

from collections.abc import Mapping

from attrs import evolve, field, frozen

from underhoist_calculators.units import Quantity, show, show_number, unit_name, unit_words


@frozen
class Exact:
    """An unrounded value in the unit of this registry name."""

    value: float
    unit: str


@frozen(kw_only=True)
class Plate:
    """A value to be read at arm's length, with the same value in other units.

    `exact_low` is the lower end where the number is a range; `exact_others` belong to `others`.
    """

    name: str
    number: str
    unit: str
    others: tuple[str, ...] = ()
    note: str = ""
    exact: Exact
    exact_low: Exact | None = None
    exact_others: tuple[Exact, ...] = ()


@frozen(kw_only=True)
class Working:
    """One line of working: what is found, the formula, the numbers put in, the result."""

    what: str
    formula: str
    numbers: str
    result: str


@frozen(kw_only=True)
class Table:
    """A small table; every row has a cell for every heading."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@frozen(kw_only=True)
class Answer:
    """The answer in one sentence, then values, what to do, tables, warnings and the working.

    `picture` is a whole `<svg>` whose texts are escaped already; a table says the same.
    """

    summary: str
    plates: tuple[Plate, ...] = ()
    do: tuple[str, ...] = ()
    tables: tuple[Table, ...] = ()
    picture: str = ""
    warnings: tuple[str, ...] = ()
    working: tuple[Working, ...] = ()
    values: Mapping[str, Exact | str] = field(factory=dict[str, Exact | str])


def exact(value: Quantity) -> Exact:
    """Keep the unrounded value."""
    return Exact(float(value.magnitude), unit_name(value))


def plate(
    name: str,
    value: Quantity,
    *,
    others: tuple[str, ...] = (),
    digits: int | None = None,
    note: str = "",
) -> Plate:
    """Make a plate of the value in its own unit, followed by the `others`."""
    others = tuple(unit for unit in others if unit != unit_name(value))
    return Plate(
        name=name,
        number=show_number(value, digits=digits),
        unit=unit_words(unit_name(value)),
        others=tuple(show(value, unit) for unit in others),
        note=note,
        exact=exact(value),
        exact_others=tuple(exact(value.to(unit)) for unit in others),
    )


def with_exact(shown: Plate, value: Quantity) -> Plate:
    """Keep in the plate the value before it was rounded to what the tool shows."""
    return evolve(
        shown,
        exact=exact(value.to(shown.exact.unit)),
        exact_others=tuple(exact(value.to(each.unit)) for each in shown.exact_others),
    )
