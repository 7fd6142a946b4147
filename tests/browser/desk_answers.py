"""The desk's Python answers a page in place of the browser's, which takes a second to come up.

For tests of what a page does with an answer. That both give the same answers is tested where all
published cases, bad entries and states of a complaint are asked: `test_calculators.py`,
`test_bad_entries.py`, `test_fault.py`.
"""

from __future__ import annotations

import json
from collections.abc import Callable

from playwright.sync_api import Page
from underhoist_calculators import door
from underhoist_calculators.fault_finding import door as fault_door

# `%s`: what the page calls what it is told.
THREAD = """addEventListener("message", async ({ data: { id, question } }) => {
    if (!question) return;  // it is told to begin, and has nothing to bring up
    const answer = await fetch("/answer-of-the-desk", {
        method: "POST", body: JSON.stringify(question),
    });
    postMessage({ id, %s: await answer.json() });
});
"""


def answered_at_the_desk(page: Page) -> None:
    """Put a thread in place of the calculators' own that asks here."""
    in_place_of(page, "calculator-worker.js", THREAD % "result", _answer)


def in_place_of(page: Page, script: str, thread: str, answer: Callable[[str], str]) -> None:
    """Put this thread in place of a script's; what it asks goes to `answer`, JSON for JSON."""
    page.route(
        f"**/{script}",
        lambda route: route.fulfill(body=thread, content_type="text/javascript"),
    )
    page.route(
        "**/answer-of-the-desk",
        lambda route: route.fulfill(
            body=answer(route.request.post_data or "{}"), content_type="application/json"
        ),
    )


def _answer(question: str) -> str:
    asked = json.loads(question)
    return json.dumps((fault_door if "complaint" in asked else door).run(**asked))
