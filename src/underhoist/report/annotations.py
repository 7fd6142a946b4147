"""Findings as workflow commands that a hosted code review shows beside the line."""

from pathlib import Path
from typing import TextIO

from underhoist.check import Checked
from underhoist.finding import Finding, Severity
from underhoist.report.paths import seen_from_here


def write_annotations(checked: Checked, folder: Path, out: TextIO) -> None:
    """Write one line a finding: error for stop, warning for look."""
    for finding in checked.findings:
        out.write(_annotation(finding, folder))


def _annotation(finding: Finding, folder: Path) -> str:
    level = "error" if finding.severity is Severity.STOP else "warning"
    at = finding.at
    file = _property(seen_from_here(folder, at))
    where = f"file={file},line={at.line},col={at.column},title={_property(finding.code)}"
    written = f'Written: "{finding.written}". ' if finding.written else ""
    return f"::{level} {where}::{_text(f'{written}{finding.wrong} {finding.mend}')}\n"


def _text(text: str) -> str:
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(text: str) -> str:
    return _text(text).replace(":", "%3A").replace(",", "%2C")
