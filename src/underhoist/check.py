"""The whole check: read the folder, apply the rules, put what they found in order."""

from pathlib import Path

from attrs import frozen

from underhoist import rules
from underhoist.finding import Finding, Severity
from underhoist.model import Manual
from underhoist.source import is_page, load


@frozen
class Checked:
    """The manual and everything found in it, by file and line, each finding once."""

    manual: Manual
    findings: tuple[Finding, ...]

    @property
    def stops(self) -> int:
        """How many findings keep a site from being built."""
        return sum(finding.severity is Severity.STOP for finding in self.findings)

    @property
    def pages(self) -> int:
        """How many pages were read or tried."""
        return sum(map(is_page, self.manual.files))


def check(folder: Path) -> Checked:
    """Check the pages in this folder. Raises Unusable where there is no such folder or no page."""
    loaded = load(folder)
    found = {*loaded.findings, *rules.run(loaded.manual)}
    order = sorted(
        found, key=lambda each: (each.at.file, each.at.line, each.at.column, each.code, each.wrong)
    )
    return Checked(loaded.manual, tuple(order))
