"""Work on many things, divided among processes where the system can double a running one."""

import os
from collections.abc import Callable, Sequence
from functools import partial
from itertools import pairwise
from pathlib import Path

THREADS = Path("/proc/self/task")
"""Linux: this process's threads. Elsewhere a process begins from nothing, which takes longer."""

LEAST = 100
"""Things in each part: fewer are done sooner than a process is doubled."""


def divided[T, R](
    work: Callable[[Sequence[T]], R], things: Sequence[T], least: int = LEAST
) -> list[R]:
    """Return what `work` makes of each part of the things, in order.

    What it makes must follow from its part alone, and be fit to be sent from process to process.
    """
    own, *rest = _parts(things, _processes(len(things) // least))
    if not rest:
        return [work(own)]
    from underhoist.doubled import Doubled  # noqa: PLC0415  # not to be had everywhere

    others = [Doubled(partial(work, part)) for part in rest]
    return [work(own), *(other.made() for other in others)]


def _processes(wanted: int) -> int:
    """How many to divide among; not among doubles that would wait for other threads' locks."""
    if wanted < 2 or not THREADS.exists() or len([*THREADS.iterdir()]) > 1:
        return 1
    return min(wanted, os.process_cpu_count() or 1)


def _parts[T](things: Sequence[T], count: int) -> list[Sequence[T]]:
    cuts = [len(things) * each // count for each in range(count + 1)]
    return [things[start:end] for start, end in pairwise(cuts)]
