"""Kills a browser at random moments while it ticks a job card, and counts what was lost.

    python benchmarks/card_kill.py [kills, 25 if not given]

Linux only: it finds the browser's processes in /proc. UNDERHOIST_TEST_SITE names a built site.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT / "tests" / "browser"))

from card_kill import Killing  # noqa: E402
from playwright.sync_api import sync_playwright  # noqa: E402
from static_server import StaticServer  # noqa: E402

KILLS = 25


def site_in(folder: Path) -> Path:
    """The demo site, built unless one is named."""
    given = os.environ.get("UNDERHOIST_TEST_SITE")
    if given:
        return Path(given)
    site = folder / "site"
    command = [sys.executable, "-m", "underhoist", "build", str(ROOT), "--site", str(site)]
    subprocess.run(command, check=True, capture_output=True)
    return site


def kill_often(site: Path, profile: Path, kills: int) -> int:
    """Kill, look, and kill again; print the sums. 1 where anything was lost or doubled."""
    server = StaticServer(site)
    confirmed = lost = doubled = 0
    began = time.monotonic()
    with sync_playwright() as playwright:
        phone = Killing(playwright, profile, server.url, seed=kills)
        phone.begin()
        for _ in range(kills):
            confirmed += phone.round()
            found = phone.look()
            lost += found["lost"]
            doubled += found["doubled"]
            phone.confirmed = found["there"]
    server.stop()
    seconds = time.monotonic() - began
    print(f"  killed {kills} times in {seconds:.0f} s while ticking and undoing")
    print(f"  shown as stored before a kill   {confirmed}")
    print(f"  there afterwards                {phone.confirmed}")
    print(f"  lost {lost}, doubled {doubled}")
    return int(lost > 0 or doubled > 0)


def main() -> int:
    """Read how often, run, and clean up after itself."""
    if sys.platform != "linux":
        print("  This benchmark finds the browser's processes in /proc: it runs on Linux only.")
        return 0
    kills = int(sys.argv[1]) if len(sys.argv) > 1 else KILLS
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        return kill_often(site_in(Path(folder)), Path(folder) / "profile", kills)


if __name__ == "__main__":
    sys.exit(main())
