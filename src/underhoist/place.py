"""Where a value was written, so that a finding can point at it."""

from attrs import field, frozen


@frozen
class Place:
    """A spot in a source file: path relative to the manual's folder, line and column from 1."""

    file: str
    line: int
    column: int

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

    def __str__(self) -> str:
        return self.written
