"""How the readers hand back what they could not read: findings carried by one exception."""

from underhoist.finding import Edit, Finding, Severity
from underhoist.place import Place
from underhoist.words import quote

FIRST_LINE = 2
"""The front matter starts below the opening dashes."""


class Faults(Exception):  # noqa: N818  # the author's faults, not the program's
    """One or more findings that keep a value from being made. The loader collects them."""

    def __init__(self, *findings: Finding) -> None:
        super().__init__(*findings)
        self.findings = findings


def fault(  # noqa: PLR0913, PLR0917 - a finding's own fields
    code: str, at: Place, written: str, wrong: str, mend: str, edit: Edit | None = None
) -> Finding:
    """Make a finding that keeps its page from being read."""
    return Finding(code, Severity.STOP, at, quote(written), wrong, mend, edit)
