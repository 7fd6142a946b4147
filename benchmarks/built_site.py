"""The demo site that a benchmark measures."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]


def site_in(folder: Path) -> Path:
    """The site named by UNDERHOIST_TEST_SITE, or else one built into this folder."""
    given = os.environ.get("UNDERHOIST_TEST_SITE")
    if given:
        return Path(given)
    site = folder / "site"
    command = [sys.executable, "-m", "underhoist", "build", str(ROOT), "--site", str(site)]
    subprocess.run(command, check=True, capture_output=True)
    return site
