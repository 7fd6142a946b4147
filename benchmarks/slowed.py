"""Slows every thread of a browser, which its own protocol does for a page's main thread only.

The browser's processes are stopped and continued in turn (SIGSTOP, SIGCONT), so that they run for
one part in `times` of the time. Linux only: the processes are found in /proc.
"""

from __future__ import annotations

import contextlib
import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

RUN = 0.002
"""Seconds between two stops: short beside anything that is measured."""

LOOK_AGAIN = 0.1
"""Seconds between two looks for processes that are new."""


@contextlib.contextmanager
def slowed(browser: int, times: float) -> Iterator[None]:
    """Slow a browser and all its processes until the block ends; at 1 it runs freely."""
    if times <= 1:
        yield
        return
    command = [sys.executable, __file__, str(browser), str(times)]
    brake = subprocess.Popen(command, stdout=subprocess.PIPE)
    try:
        (brake.stdout or sys.stdin).read(1)  # It is on.
        yield
    finally:
        brake.kill()
        brake.communicate()
        tell(family(browser), signal.SIGCONT)


def browser_of(profile: Path) -> int:
    """The process of the browser that was started with this profile folder."""
    wanted = f"--user-data-dir={profile}".encode()
    for process in _processes():
        with contextlib.suppress(OSError):
            arguments = Path(f"/proc/{process}/cmdline").read_bytes().split(b"\0")
            if wanted in arguments and not any(each.startswith(b"--type=") for each in arguments):
                return process
    raise SystemExit("The browser's processes were not found: this needs Linux.")


def family(browser: int) -> list[int]:
    """A process and all that descend from it."""
    parents: dict[int, int] = {}
    for process in _processes():
        with contextlib.suppress(OSError):
            status = Path(f"/proc/{process}/stat").read_text(encoding="utf-8")
            parents[process] = int(status.rpartition(")")[2].split()[1])
    found = [browser]
    for process in found:
        found += [child for child, parent in parents.items() if parent == process]
    return found


def tell(processes: list[int], what: signal.Signals) -> None:
    """Send a signal to each process that is still there."""
    for process in processes:
        with contextlib.suppress(ProcessLookupError):
            os.kill(process, what)


def brake(browser: int, times: float) -> None:
    """Stop and continue the browser until told to end.

    This process is late itself, on a busy machine and when it looks for new processes: a stop lasts
    as long as the runs before it ask, and a run makes up for a stop that was too long.
    """
    with contextlib.suppress(PermissionError):
        os.nice(-20)
    processes = family(browser)
    print(".", end="", flush=True)
    ran, stood = 0.0, 0.0
    began = looked = time.monotonic()
    while True:
        tell(processes, signal.SIGCONT)
        time.sleep(max(RUN, stood / (times - 1) - ran))
        tell(processes, signal.SIGSTOP)
        stopped = time.monotonic()
        ran += stopped - began
        if stopped - looked > LOOK_AGAIN:
            processes, looked = family(browser), time.monotonic()
        until = stopped + ran * (times - 1) - stood
        time.sleep(max(0.0, until - time.monotonic()))
        began = time.monotonic()
        stood += began - stopped


def _processes() -> list[int]:
    return [int(entry.name) for entry in Path("/proc").glob("[0-9]*")]


if __name__ == "__main__":
    brake(int(sys.argv[1]), float(sys.argv[2]))
