"""Which Chromium the browser tests take."""

import os
import shutil

CHROMIUM = (
    os.environ.get("UNDERHOIST_CHROMIUM")
    or shutil.which("chromium-headless-shell")
    or shutil.which("chromium")
)
"""The headless one opens no windows around its pages: a third of the work."""

QUIET = [
    "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
]  # fmt: skip
"""How every test and benchmark starts it."""
