"""What a calculator is given: entries already read, of the kinds that its fields declare."""

from collections.abc import Mapping

from attrs import frozen

from underhoist_calculators.tyre import Tyre
from underhoist_calculators.units import Quantity, Span

Value = Quantity | Span | Tyre | str


class EntryError(ValueError):
    """An entry that can be read but makes no sense: which field, what is wrong, how to mend it."""

    def __init__(self, field: str, wrong: str, mend: str) -> None:
        """`wrong` and `mend` are whole sentences."""
        super().__init__(field, wrong, mend)
        self.field = field
        self.wrong = wrong
        self.mend = mend


@frozen
class Inputs:
    """Values by field name. A field left empty has none: missing is never zero."""

    values: Mapping[str, Value]

    def quantity(self, name: str) -> Quantity:
        """Give the quantity; raises `EntryError` where the field is empty."""
        value = self.maybe(name)
        if value is None:
            raise EntryError(name, "Nothing is written.", "This entry is needed.")
        return value

    def maybe(self, name: str) -> Quantity | None:
        """Give the quantity, or None where the field is empty or holds a word."""
        value = self.values.get(name)
        return value if isinstance(value, Quantity) else None

    def span(self, name: str) -> Span | None:
        """Give the range, or None where the field is empty."""
        value = self.values.get(name)
        return value if isinstance(value, Span) else None

    def word(self, name: str) -> str | None:
        """Give the chosen word or the name, or None where the field is empty or a quantity."""
        value = self.values.get(name)
        return value if isinstance(value, str) else None

    def tyre(self, name: str) -> Tyre | None:
        """Give the tyre, or None where the field is empty."""
        value = self.values.get(name)
        return value if isinstance(value, Tyre) else None
