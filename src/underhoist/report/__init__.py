"""Findings for people, programs and code review: one file a form, none of them decides anything."""

from pathlib import Path
from typing import TextIO

from underhoist.check import Checked


def write(form: str, checked: Checked, folder: Path, out: TextIO) -> None:
    """Write what was found in the folder's manual in this form: text, json, github or lines."""
    if form == "json":
        from underhoist.report.as_json import write_json  # noqa: PLC0415  # only what is asked for

        write_json(checked, folder, out)
    elif form == "github":
        from underhoist.report.annotations import write_annotations  # noqa: PLC0415

        write_annotations(checked, folder, out)
    elif form == "lines":
        from underhoist.report.lines import write_lines  # noqa: PLC0415

        write_lines(checked, folder, out)
    else:
        from underhoist.report.text import write_text  # noqa: PLC0415

        write_text(checked, folder, out)
