"""The desk's Python checks drafts in place of the browser's, which takes seconds to come up.

For tests of what the drafting page does with an answer. That the browser's Python gives the same
answers is tested in `test_drafting.py`: every bad example, every question, hostile texts.
"""

from __future__ import annotations

import tempfile
from pathlib import Path
from unittest.mock import patch

from desk_answers import THREAD, in_place_of
from playwright.sync_api import Page

from underhoist.drafting import door


def lay_out(manual: str, folder: Path) -> None:
    """Lay the manual out as the browser does, in a folder that is cleared away with the tests'."""
    with patch.object(tempfile, "tempdir", str(folder)):
        door.open_desk(manual)


def drafted_at_the_desk(page: Page, site: Path, folder: Path) -> None:
    """Lay the site's manual out, and put a thread that asks here in place of the page's own."""
    lay_out((site / "drafting" / "manual.json").read_text(encoding="utf-8"), folder)
    thread = THREAD % "answer" + "postMessage({ ready: true });"
    in_place_of(page, "desk-worker.js", thread, door.ask)
