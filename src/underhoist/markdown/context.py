"""What the Markdown side must be told about the manual while it reads one page."""

from typing import Protocol

from attrs import frozen

SCHEMES = (
    "torque", "procedure", "reading", "part", "tool", "hazard", "family", "fault", "calc",
)  # fmt: skip


@frozen
class Shown:
    """What a reference shows: where it leads, its own words and, for a torque, its live value."""

    key: str
    """Scheme and full id: "torque:kestrel-3/band-seat"."""
    href: str
    title: str
    value: str | None = None


class Context(Protocol):
    """Answers for the page that is being read."""

    def shown(self, scheme: str, id_: str) -> Shown | None:
        """Return what the reference shows, None where it leads nowhere."""
        ...

    def to_file(self, path: str) -> str | None:
        """Link to another page or drawing by its path from this page's file; None if not ours."""
        ...

    def size(self, path: str) -> tuple[int, int] | None:
        """Width and height of a drawing, so that the page does not jump; None if unknown."""
        ...

    def panel(self, hazard: str) -> str:
        """Return the hazard's panel as HTML."""
        ...
