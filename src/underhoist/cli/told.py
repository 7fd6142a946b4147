"""What a build shows while it runs, and the few lines at its end."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Self

from underhoist.build import Built
from underhoist.history.report import MOST
from underhoist.history.report import lines as lines_of

if TYPE_CHECKING:
    from rich.progress import Progress, TaskID


class Told:
    """A progress bar on a terminal; elsewhere nothing until the end."""

    def __init__(self) -> None:
        self._bars = _bars() if sys.stdout.isatty() else None
        self._task: TaskID | None = None

    def __enter__(self) -> Self:
        if self._bars:
            self._bars.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        at: TracebackType | None,
    ) -> None:
        del kind, error, at
        if self._bars:
            self._bars.stop()

    def stage(self, words: str, steps: int | None = None) -> None:
        """Finish the bar before and begin one more."""
        if self._bars is None:
            return
        if self._task is not None:
            done = self._bars.tasks[self._task]
            self._bars.update(
                self._task, total=1, completed=1 if done.total is None else done.total
            )
        self._task = self._bars.add_task(words, total=steps)

    def step(self) -> None:
        """Move the bar."""
        if self._bars and self._task is not None:
            self._bars.advance(self._task)


def _bars() -> Progress:
    from rich.console import Console  # noqa: PLC0415 - who waits for no bar does not wait for it
    from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn  # noqa: PLC0415

    columns = TextColumn("{task.description:<34}"), BarColumn(24), TimeElapsedColumn()
    return Progress(*columns, console=Console(), transient=True)


def summary(built: Built) -> str:
    """Say what the site holds, what the check found, and how to open it."""
    manual = built.checked.manual
    held = [
        _count(len(manual.procedures), "procedure", "procedures"),
        _count(len(manual.families), "unit family", "unit families"),
        _count(built.calculators, "calculator", "calculators"),
        _count(built.cross_links, "cross-link", "cross-links"),
    ]
    looks = len(built.checked.findings)
    found = (
        f"{_count(looks, 'finding', 'findings')} to look at, above" if looks else "nothing found"
    )
    lines = [
        f"The site holds {', '.join(held[:-1])} and {held[-1]}.",
        f"The check read {_count(built.checked.pages, 'page', 'pages')}: {found}.",
    ]
    if built.taken_over:
        anew = _count(built.made_anew, "page was", "pages were")
        same = _count(built.taken_over, "page is", "pages are")
        lines.append(f"{anew} made anew, {same} as the build before left them.")
    if built.phone is not None:
        lines.append(f"On a phone: {built.phone.summary()}.")
    lines += _changed(built)
    lines.append(f"To open it: {_way_to_open(built.site)}")
    return "\n".join(lines)


def _changed(built: Built) -> list[str]:
    """Say what is different from the build before, torques and capacities first."""
    history = built.history
    if history is None:
        return []
    said = [history.problem] if history.problem else []
    if not history.compared:
        return [*said, "There is no earlier build to compare with."]
    if history.build is None:
        return [*said, "Nothing has changed since the build before."]
    told = lines_of(history, history.build, MOST)
    return [*said, "Since the build before:", *(f"  {line}" for line in told)]


def _way_to_open(site: Path | None) -> str:
    """Give the command as it works from here, also where the environment is not activated."""
    command = Path(sys.executable).with_name("underhoist")
    return f"{_from_here(command)} open {_from_here(site) if site else 'site'}"


def _from_here(path: Path) -> str:
    shown = os.path.relpath(path)
    return str(path) if shown.startswith("..") else shown


def _count(number: int, one: str, many: str) -> str:
    return f"{number:,} {one if number == 1 else many}"
