"""Which Chromium the browser tests take."""

import os
import shutil

CHROMIUM = (
    os.environ.get("UNDERHOIST_CHROMIUM")
    or shutil.which("chromium-headless-shell")
    or shutil.which("chromium")
)
"""The headless one opens no windows around its pages: a third of the work."""
