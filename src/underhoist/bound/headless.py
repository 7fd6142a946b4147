"""Finds a Chromium and has it print a page to PDF; no window opens."""

import os
import shutil
import subprocess
from pathlib import Path
from tempfile import TemporaryDirectory

from underhoist.project import Unusable

VARIABLE = "UNDERHOIST_CHROMIUM"
"""The environment variable that names the program to use."""
_NAMES = ("chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome",
          "msedge", "microsoft-edge")  # fmt: skip
_PLACES = (
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
    r"C:\Program Files\Microsoft\Edge\Application\msedge.exe",
)
MISSING = (
    "Printing needs Chromium, version 131 or newer, and none was found. Install it (on Debian and "
    f"Ubuntu: sudo apt install chromium), or name the program in {VARIABLE}."
)
_LONGEST = 600  # seconds; a book of a thousand pages takes a minute or two


def chromium() -> str:
    """Return the program: the one that is named, else one that is installed. Raises Unusable."""
    named = os.environ.get(VARIABLE)
    if named:
        found = shutil.which(named)
        if found is None:
            raise Unusable(f"{VARIABLE} names {named}, and there is no such program.")
        return found
    found = next(filter(None, map(shutil.which, (*_NAMES, *_PLACES))), None)
    if found is None:
        raise Unusable(MISSING)
    return found


def printed(html: str) -> bytes:
    """Return the page as PDF, in the size and with the margins that its style says.

    Raises Unusable where there is no Chromium or it does not print.
    """
    program = chromium()
    with TemporaryDirectory(prefix="underhoist-", ignore_cleanup_errors=True) as folder:
        page, pdf = Path(folder) / "page.html", Path(folder) / "page.pdf"
        page.write_text(html, encoding="utf-8")
        command = [
            program, "--headless", "--disable-gpu", "--no-first-run", "--disable-sync",
            "--disable-background-networking", "--disable-component-update",
            *_sandbox(), f"--user-data-dir={folder}/profile", "--no-pdf-header-footer",
            f"--print-to-pdf={pdf}", page.as_uri(),
        ]  # fmt: skip
        try:
            done = subprocess.run(  # noqa: S603  (the browser that is installed, on our own page)
                command, capture_output=True, text=True, errors="replace", timeout=_LONGEST,
                check=False,
            )  # fmt: skip
        except (OSError, subprocess.TimeoutExpired) as problem:
            raise Unusable(f"{program} did not print: {problem}") from None
        if not pdf.is_file():
            last = "\n".join(done.stderr.strip().splitlines()[-3:])
            raise Unusable(f"{program} did not print.\n{last}")
        return pdf.read_bytes()


def _sandbox() -> tuple[str, ...]:
    """Chromium refuses its sandbox to the administrator, as in most build containers."""
    is_root = hasattr(os, "geteuid") and os.geteuid() == 0
    return ("--no-sandbox",) if is_root else ()
