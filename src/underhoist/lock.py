"""One build at a time into one place; a lock goes with the process that holds it."""

import json
import os
import socket
from collections.abc import Generator
from contextlib import contextmanager, suppress
from datetime import datetime
from pathlib import Path

from filelock import FileLock, Timeout

from underhoist.project import Unusable


@contextmanager
def held(site: Path) -> Generator[None]:
    """Hold the place of a site. Raises Unusable where another build holds it, and says which."""
    site.parent.mkdir(parents=True, exist_ok=True)
    lock = FileLock(_beside(site, "lock"))
    try:
        lock.acquire(timeout=0)
    except Timeout:
        msg = f"{_holder(site)} is building into {site}. Wait until it has ended, then build again."
        raise Unusable(msg) from None
    except OSError as problem:
        raise Unusable(f"{site} cannot be built: {problem.strerror}.") from None
    try:
        _sign(site)
        yield
    finally:
        for ending in ("holder", "lock"):
            with suppress(OSError):  # Windows deletes the lock itself, on release
                _beside(site, ending).unlink(missing_ok=True)
        lock.release()


def _sign(site: Path) -> None:
    """Say who holds the place, for whoever is refused."""
    now = datetime.now().astimezone()
    who = {"process": os.getpid(), "on": socket.gethostname(), "since": f"{now:%H:%M}"}
    with suppress(OSError):  # a full disk is told by the build itself
        _beside(site, "holder").write_text(json.dumps(who), encoding="utf-8")


def _holder(site: Path) -> str:
    """Name the build that holds the place, as far as it has said."""
    try:
        who = json.loads(_beside(site, "holder").read_text(encoding="utf-8"))
        return f"Another build (process {who['process']} on {who['on']}, since {who['since']})"
    except (OSError, ValueError, KeyError, TypeError):
        return "Another build"


def _beside(site: Path, ending: str) -> Path:
    return site.with_name(f"{site.name}.underhoist-{ending}")
