"""The desk's Python checks drafts in place of the browser's, which takes seconds to come up.

For tests of what the drafting page does with an answer. That the browser's Python gives the same
answers is tested in `test_drafting.py`: every bad example, every question, hostile texts.
"""

from __future__ import annotations

import tempfile
from pathlib import Path
from unittest.mock import patch

from playwright.sync_api import Page, Route

from underhoist.drafting import door

THREAD = """addEventListener("message", async ({ data: { id, question } }) => {
    const answer = await fetch("/answer-of-the-desk", {
        method: "POST", body: JSON.stringify(question),
    });
    postMessage({ id, answer: await answer.json() });
});
postMessage({ ready: true });
"""


def lay_out(manual: str, folder: Path) -> None:
    """Lay the manual out as the browser does, in a folder that is cleared away with the tests'."""
    with patch.object(tempfile, "tempdir", str(folder)):
        door.open_desk(manual)


def drafted_at_the_desk(page: Page, site: Path, folder: Path) -> None:
    """Lay the site's manual out, and put a thread that asks here in place of the page's own."""
    lay_out((site / "drafting" / "manual.json").read_text(encoding="utf-8"), folder)
    page.route(
        "**/desk-worker.js",
        lambda route: route.fulfill(body=THREAD, content_type="text/javascript"),
    )
    page.route("**/answer-of-the-desk", _answer)


def _answer(route: Route) -> None:
    told = door.ask(route.request.post_data or "")
    route.fulfill(body=told, content_type="application/json")
