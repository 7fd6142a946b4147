"""Hostile addresses: what stands behind ? and # of a page is text, whatever it is."""

import pytest
from playwright.sync_api import Page

pytestmark = pytest.mark.browser

PAGES = ("calculators/torque-units/", "cards/", "search.html", "drafting/", "faults/late-shifts/")
HTML = '"><img src=x onerror="globalThis.got=1"><script>globalThis.got=1</script>'
ENTRIES = (HTML, "%E0%A4%A", "__proto__", "../../../x", "9" * 20_000)


def test_no_address_runs_or_breaks_a_page(new_page: Page, site_url: str) -> None:
    page = new_page
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(f"{page.url[:90]}: {error}"))
    for address in PAGES:
        for entry in ENTRIES:
            query = f"?q={entry}&torque={entry}&{entry}={entry}"
            page.goto(f"{site_url}{address}{query}#card/{entry}/1")
            page.locator("h1").wait_for()
            assert page.evaluate("globalThis.got ?? 0") == 0, (address, entry[:60])
    assert errors == []
