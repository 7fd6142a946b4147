"""Findings as JSON: one object, keys as in `underhoist.finding.Finding`."""

import json
from pathlib import Path
from typing import TextIO

from attrs import asdict

from underhoist.check import Checked


def write_json(checked: Checked, folder: Path, out: TextIO) -> None:
    """Write the folder, its number of pages and every finding; files are relative to the folder."""
    findings = [
        {
            "file": each.at.file,
            "line": each.at.line,
            "column": each.at.column,
            "code": each.code,
            "severity": each.severity.value,
            "written": each.written,
            "wrong": each.wrong,
            "mend": each.mend,
            "edit": asdict(each.edit) if each.edit else None,
        }
        for each in checked.findings
    ]
    whole = {"folder": folder.as_posix(), "pages": checked.pages, "findings": findings}
    json.dump(whole, out, ensure_ascii=False, indent=2)
    out.write("\n")
