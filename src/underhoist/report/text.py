"""Findings for people: the place first, so that an editor can jump to it, then what and why."""

from pathlib import Path
from typing import TextIO

from rich.console import Console
from rich.table import Table
from rich.text import Text

from underhoist.check import Checked
from underhoist.finding import Finding, Severity
from underhoist.report.paths import seen_from_here


def write_text(checked: Checked, folder: Path, out: TextIO) -> None:
    """Write every finding and a closing line; colour and wrapped lines only on a terminal."""
    console = Console(file=out, highlight=False, emoji=False)
    for finding in checked.findings:
        _write(finding, folder, console)
    console.print(Text(_closing(checked), style="bold"), soft_wrap=True)


def _write(finding: Finding, folder: Path, console: Console) -> None:
    at = finding.at
    head = Text(f"{seen_from_here(folder, at)}:{at.line}:{at.column}", style="bold")
    head.append(
        f"  {finding.severity}  ",
        style="bold red" if finding.severity is Severity.STOP else "yellow",
    )
    head.append(finding.code, style="cyan")
    console.print(head, soft_wrap=True)
    rows = (
        ("written", finding.written or "(nothing)"),
        ("wrong", finding.wrong),
        ("mend", finding.mend),
    )
    if console.is_terminal:
        grid = Table.grid(padding=(0, 2, 0, 0))
        for word, text in rows:
            grid.add_row(Text(f"  {word}", style="dim"), Text(text))
        console.print(grid)
    else:
        for word, text in rows:
            console.print(Text(f"  {word:<8} {text}"), soft_wrap=True)
    console.print()


def _closing(checked: Checked) -> str:
    """Say how many pages were checked and what was found, in one sentence."""
    stops = checked.stops
    looks = len(checked.findings) - stops
    pages = _count(checked.pages, "page")
    if not checked.findings:
        return f"{pages} checked: nothing found."
    parts = (
        [f"{_count(stops, 'finding')} {'stops' if stops == 1 else 'stop'} the build"]
        if stops
        else []
    )
    parts += [f"{_count(looks, 'finding')} to look at"] if looks else []
    return f"{pages} checked: {', '.join(parts)}."


def _count(number: int, thing: str) -> str:
    return f"{number:,} {thing}" if number == 1 else f"{number:,} {thing}s"
