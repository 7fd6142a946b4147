"""What tests of divided work let a process of its own divide: that of the tests has threads."""

import os
import signal
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path

from in_child import quick_start

from underhoist import rules
from underhoist.check import check
from underhoist.divided import divided
from underhoist.finding import Finding

THINGS = range(10)

Did = tuple[int, list[int]]
"""The process, and the part that it had."""


def apart[**P, T](work: Callable[P, T], *args: P.args, **kwargs: P.kwargs) -> T:
    """Return what this work, which has a name in a file, comes to in a process without threads."""
    with ProcessPoolExecutor(1, quick_start()) as pool:
        return pool.submit(work, *args, **kwargs).result()


def who(part: Sequence[int]) -> Did:
    """Say who was given this part."""
    return os.getpid(), list(part)


def shared_out() -> tuple[int, list[Did]]:
    """Divide, with one thing as the least; return this process, and who did what."""
    return os.getpid(), divided(who, THINGS, 1)


def killed() -> tuple[int, list[Did]]:
    """Divide among processes each of which is killed before it has done anything."""
    own = os.getpid()

    def work(part: Sequence[int]) -> Did:
        if os.getpid() != own:
            os.kill(os.getpid(), signal.SIGKILL)
        return who(part)

    return own, divided(work, THINGS, 1)


def without_room() -> tuple[int, list[Did]]:
    """Divide where the system begins no more processes."""

    def full() -> int:
        raise BlockingIOError

    os.fork = full
    return shared_out()


def wrong() -> None:
    """Divide work that cannot be done on the last thing."""

    def work(part: Sequence[int]) -> None:
        if THINGS[-1] in part:
            raise ValueError(*part)

    divided(work, THINGS, 1)


def found(folder: Path) -> tuple[Finding, ...]:
    """Check a folder, with the rules divided over its pages however few they are."""
    rules.divided = partial(divided, least=1)
    return check(folder).findings
