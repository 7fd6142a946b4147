"""A browser that can be killed and started again on what it left. Linux only: it looks in /proc."""

from __future__ import annotations

import contextlib
import os
import signal
import time
from pathlib import Path

from chromium import CHROMIUM, QUIET


class KilledBrowser:
    """A phone's browser whose profile outlives it."""

    def __init__(self, playwright, profile: Path, service_workers: str = "block") -> None:
        self.playwright, self.profile = playwright, profile
        self.service_workers = service_workers

    def launch(self):
        """Start it; returns its context and a page."""
        found = {"executable_path": CHROMIUM} if CHROMIUM else {}
        context = self.playwright.chromium.launch_persistent_context(
            str(self.profile), **found, args=QUIET, viewport={"width": 390, "height": 844},
            service_workers=self.service_workers,
        )  # fmt: skip
        return context, context.pages[0] if context.pages else context.new_page()

    def kill(self) -> None:
        """End every process of it at once, without a chance to write anything more."""
        own = {pid for pid in _pids() if str(self.profile) in _command(pid)}
        while grown := {pid for pid in _pids() if _parent(pid) in own} - own:
            own |= grown
        assert own, "there is a browser to kill"
        for pid in own:
            with contextlib.suppress(ProcessLookupError):
                os.kill(pid, signal.SIGKILL)
        until = time.monotonic() + 10
        while any(_is_alive(pid) for pid in own) and time.monotonic() < until:
            time.sleep(0.01)


def _pids() -> list[int]:
    return [int(path.name) for path in Path("/proc").iterdir() if path.name.isdigit()]


def _command(pid: int) -> str:
    try:
        return Path(f"/proc/{pid}/cmdline").read_bytes().decode(errors="replace")
    except OSError:
        return ""


def _status(pid: int) -> list[str]:
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    except OSError:
        return []


def _parent(pid: int) -> int:
    status = _status(pid)
    return int(status[1]) if status else 0


def _is_alive(pid: int) -> bool:
    status = _status(pid)
    return bool(status) and status[0] != "Z"
