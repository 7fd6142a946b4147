"""A finding is a small frozen value; how it is shown is the business of `underhoist.report`."""

from enum import StrEnum

from attrs import frozen

from underhoist.place import Place


class Severity(StrEnum):
    """What a finding does to the build."""

    STOP = "stop"
    """No site is built."""
    LOOK = "look"
    """The site is built and the finding is listed."""


@frozen
class Edit:
    """A change of one file: `text` in place of what stands from `line` and `column` to the end.

    Lines and columns count from 1 as in `Place`; the end is the place behind the last sign, so
    that an edit whose end is its start puts something in. Lines in `text` end with a line feed.
    """

    file: str
    line: int
    column: int
    end_line: int
    end_column: int
    text: str


@frozen
class Finding:
    """One thing the check found.

    `written` is the author's own text, `wrong` says why it cannot stand, `mend` what to do. `edit`
    does it where no thought is needed and no meaning can change.
    """

    code: str
    severity: Severity
    at: Place
    written: str
    wrong: str
    mend: str
    edit: Edit | None = None
