"""Work done by a double of this process while this one goes on. Linux only."""

import signal
from collections.abc import Callable
from contextlib import suppress
from multiprocessing import get_context
from multiprocessing.connection import Connection

_FORK = get_context("fork")


class Doubled[R]:
    """Work that a double of this process has begun."""

    def __init__(self, work: Callable[[], R]) -> None:
        """Begin."""
        self._work = work
        self._made, theirs = _FORK.Pipe(duplex=False)
        with theirs, suppress(OSError):  # the system may have no room for one more process
            _FORK.Process(target=_do, args=(work, theirs), daemon=True).start()

    def made(self) -> R:
        """Return what it made; where it failed or was killed, the work is done here once more."""
        try:
            return self._made.recv()
        except (EOFError, OSError):
            return self._work()


def _do(work: Callable[[], object], made: Connection) -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the one process says that it was stopped
    with suppress(Exception):
        made.send(work())
