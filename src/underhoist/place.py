"""Where a value was written, so that a finding can point at it."""

from attrs import field, frozen


@frozen
class Place:
    """A spot in a source file: path relative to the manual's folder, line and column from 1."""

    file: str
    line: int
    column: int

    def __reduce__(self) -> tuple[type["Place"], tuple[str, int, int]]:
        """Be kept as what it is made from: a build reads tens of thousands back."""
        return Place, (self.file, self.line, self.column)

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@frozen
class Placed[T]:
    """A value, where it stands and what the author typed for it."""

    value: T
    at: Place
    written: str
    is_plain: bool = field(default=False, eq=False)
    """Whether exactly `written` stands at the place: on one line, without quotes."""

    def __reduce__(self) -> tuple[type["Placed[T]"], tuple[T, Place, str, bool]]:
        """Be kept as what it is made from, as the place is."""
        return Placed, (self.value, self.at, self.written, self.is_plain)

    def __str__(self) -> str:
        return self.written
