"""Mends as people read them before they say yes: what each is for, and the lines that change."""

from collections.abc import Iterator, Mapping
from difflib import unified_diff
from pathlib import Path
from typing import TextIO

from underhoist.mends import Plan
from underhoist.report.paths import seen_from_here


def write_plan(plan: Plan, before: Mapping[str, str], folder: Path, out: TextIO) -> None:
    """Write the mends file by file: first in words, then the old lines and the new ones."""
    for file, after in plan.texts.items():
        mended = [each for each in plan.mended if each.at.file == file]
        out.write(f"{seen_from_here(folder, mended[0].at)}\n")
        for each in mended:
            out.write(f"  line {each.at.line}: {each.wrong} {each.mend}\n")
        out.writelines(f"    {line}\n" for line in _changes(before[file], after))
        out.write("\n")
    count, files = len(plan.mended), len(plan.texts)
    mends = f"{count:,} {'mend' if count == 1 else 'mends'}"
    out.write(f"{mends} in {files:,} {'page' if files == 1 else 'pages'}.\n")


def _changes(before: str, after: str) -> Iterator[str]:
    """Yield the lines that go (-), come (+) or stand beside them, without headings."""
    lines = unified_diff(before.splitlines(), after.splitlines(), n=1, lineterm="")
    yield from (line for line in lines if not line.startswith(("---", "+++")))
