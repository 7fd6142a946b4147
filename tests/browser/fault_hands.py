"""What a person does on a complaint's page, and what the desk says to it."""

from __future__ import annotations

import re
from pathlib import Path

from offline_hands import WAIT
from playwright.sync_api import Page, expect
from underhoist_calculators.fault_finding import door

CLIENT = Path(__file__).parents[2] / "site_overrides" / "assets" / "fault" / "client.js"
MOST = int(re.search(r"MOST = ([\d_]+);", CLIENT.read_text(encoding="utf-8"))[1])


def answered(page: Page) -> None:
    page.locator("#fault[data-answered=yes]").wait_for(timeout=WAIT)


def next_check(page: Page):
    return page.locator(".uh-next > h3")


def give(page: Page, result: str, times: int) -> None:
    page.locator(f".uh-next .uh-result[data-result='{result}']").click()
    expect(page.locator(".uh-done li")).to_have_count(times)
    answered(page)


def told_at_the_desk(data, family, results=()):
    return door.run(data["by_family"][family]["complaint"], list(results), MOST)
