"""How the readers hand back what they could not read: findings carried by one exception."""

from underhoist.finding import Finding, Severity
from underhoist.place import Place

LONGEST_QUOTE = 60
"""Characters of the author's text that a finding repeats."""


class Faults(Exception):
    """One or more findings that keep a value from being made. The loader collects them."""

    def __init__(self, *findings: Finding) -> None:
        super().__init__(*findings)
        self.findings = findings


def fault(code: str, at: Place, written: str, wrong: str, mend: str) -> Finding:
    """A finding that keeps its page from being read."""
    return Finding(code, Severity.STOP, at, quote(written), wrong, mend)


def quote(text: str) -> str:
    """The author's text on one line, cut where it is long."""
    line = " ".join(text.split())
    return line if len(line) <= LONGEST_QUOTE else line[: LONGEST_QUOTE - 1] + "…"
