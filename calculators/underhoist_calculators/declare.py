"""What a calculator declares, once: its fields, its sources, its limits and the function it runs.

The form, the command line, the pre-filled links and the tests are all made from this.
"""

from collections.abc import Callable

from attrs import frozen

from underhoist_calculators.answer import Answer
from underhoist_calculators.inputs import Inputs
from underhoist_calculators.units import KINDS, unit_named

FIELD_KINDS = KINDS | {"choice", "text", "tyre"}
"""What a field can hold: a quantity of one kind, one of several words, a name, or a tyre size."""


@frozen
class Choice:
    """One of the words that a `choice` field takes."""

    name: str
    label: str


@frozen(kw_only=True)
class Field:
    """One entry of a calculator.

    `default` stands where nothing is entered and is always shown; `example` only fills an empty
    form. `low`, `high`, `default` and `example` are texts with their unit.
    """

    name: str
    label: str
    help: str
    kind: str
    group: str
    units: tuple[str, ...] = ()
    low: str | None = None
    high: str | None = None
    default: str | None = None
    example: str | None = None
    required: bool = True
    span: bool = False
    choices: tuple[Choice, ...] = ()
    words: tuple[str, ...] = ()
    fills_from: str | None = None
    row: str | None = None

    def __attrs_post_init__(self) -> None:
        if self.kind not in FIELD_KINDS or not all(map(unit_named, self.units)):
            msg = f"field {self.name} declares an unknown kind or unit"
            raise ValueError(msg)


@frozen(kw_only=True)
class Calculator:
    """A calculator: what it is for, what it asks, what it rests on and what it does.

    `folded` names the groups that come filled (from the family, or by convention) and those that
    seldom are: the form puts them away under a line that says what they hold. `patterns` are the
    words that its answer's `values["pattern"]` can be, none where it names no pattern.
    """

    name: str
    title: str
    purpose: str
    group: str
    fields: tuple[Field, ...]
    sources: tuple[str, ...]
    limits: tuple[str, ...]
    folded: tuple[str, ...] = ()
    patterns: tuple[str, ...] = ()
    run: Callable[[Inputs], Answer]

    def field(self, name: str) -> Field | None:
        """Find the field of this name, or None."""
        return next((field for field in self.fields if field.name == name), None)
