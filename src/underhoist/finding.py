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
class Finding:
    """One thing the check found.

    `written` is the author's own text, `wrong` says why it cannot stand, `mend` what to do.
    """

    code: str
    severity: Severity
    at: Place
    written: str
    wrong: str
    mend: str
