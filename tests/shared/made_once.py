"""Something costly that all processes of a test run share: the first makes it, the others wait."""

import time
from collections.abc import Callable
from pathlib import Path

LONGEST = 600
"""Seconds after which whoever makes it is given up."""


def made_once(folder: Path, make: Callable[[Path], str]) -> Path:
    """Give the folder that `make` fills. It answers with what went wrong, or with nothing."""
    taken, ready = folder.with_suffix(".taken"), folder.with_suffix(".ready")
    try:
        taken.touch(exist_ok=False)
    except FileExistsError:
        _wait_for(ready)
    else:
        wrong = make(folder)
        part = ready.with_suffix(".part")
        part.write_text(wrong, encoding="utf-8")
        part.rename(ready)  # whole, or not there
    wrong = ready.read_text(encoding="utf-8")
    assert not wrong, wrong
    return folder


def _wait_for(file: Path) -> None:
    end = time.monotonic() + LONGEST
    while not file.exists():
        assert time.monotonic() < end, f"{file.name} was not made within {LONGEST} s"
        time.sleep(0.2)
