"""Findings one a line, in the form that editors and compilers share."""

from pathlib import Path
from typing import TextIO

from underhoist.check import Checked
from underhoist.finding import Severity
from underhoist.report.paths import seen_from_here


def write_lines(checked: Checked, folder: Path, out: TextIO) -> None:
    """Write `file:line:column: error: why and how to mend it [code]`; nothing where all is well."""
    for finding in checked.findings:
        at = finding.at
        level = "error" if finding.severity is Severity.STOP else "warning"
        words = f"{finding.wrong} {finding.mend} [{finding.code}]"
        out.write(f"{seen_from_here(folder, at)}:{at.line}:{at.column}: {level}: {words}\n")
