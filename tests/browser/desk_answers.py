"""The desk's Python answers a page in place of the browser's, which takes a second to come up.

For tests of what a page does with an answer. That both give the same answers is tested where all
published cases, bad entries and states of a complaint are asked: `test_calculators.py`,
`test_bad_entries.py`, `test_fault.py`.
"""

from __future__ import annotations

import json

from playwright.sync_api import Page, Route
from underhoist_calculators import door
from underhoist_calculators.fault_finding import door as fault_door

THREAD = """addEventListener("message", async ({ data: { id, question } }) => {
    const answer = await fetch("/answer-of-the-desk", {
        method: "POST", body: JSON.stringify(question),
    });
    postMessage({ id, result: await answer.json() });
});
"""


def answered_at_the_desk(page: Page) -> None:
    """Put a thread in place of the calculators' own that asks here."""
    page.route(
        "**/calculator-worker.js",
        lambda route: route.fulfill(body=THREAD, content_type="text/javascript"),
    )
    page.route("**/answer-of-the-desk", _answer)


def _answer(route: Route) -> None:
    asked = json.loads(route.request.post_data or "{}")
    answer = (fault_door if "complaint" in asked else door).run(**asked)
    route.fulfill(body=json.dumps(answer), content_type="application/json")
