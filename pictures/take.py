"""Takes the README's pictures from the demo manual: `.venv/bin/python pictures/take.py`."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Thread

from playwright.sync_api import Page, sync_playwright

from underhoist.serving import server

HERE = Path(__file__).parent
SITE = HERE.parent / "site"


@contextmanager
def served(site: Path) -> Iterator[str]:
    """Serve the finished site while the pictures are taken."""
    serving = server(site, 0)
    Thread(target=serving.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{serving.server_address[1]}/"
    serving.shutdown()


def procedure(page: Page, root: str) -> None:
    """Show the step that seats the band, its plate in the middle."""
    page.goto(f"{root}kestrel-3/set-band/")
    page.locator("#step-7").evaluate("step => step.scrollIntoView({block: 'start'})")


def calculator(page: Page, root: str) -> None:
    """Show the staged fill's answer for the demo family."""
    page.goto(f"{root}calculators/staged-fill/")
    page.locator(".uh-answer").evaluate("answer => answer.scrollIntoView({block: 'start'})")


def card(page: Page, root: str) -> None:
    """Start a card and stand at the step that takes a reading."""
    page.goto(f"{root}cards/")
    page.get_by_role("link", name="Start a card").click()
    page.get_by_label("Your initials").fill("TK")
    page.get_by_role("button", name="Keep").click()
    page.get_by_label("Unit family").select_option("kestrel-3")
    page.get_by_label("Identification").fill("Marlow Drover, green")
    page.get_by_label("Odometer").fill("84210 km")
    page.get_by_label("In the owner’s words").fill("Changes up late and leaves a spot")
    page.get_by_role("radio", name="None of these").check()
    page.get_by_role("button", name="Start the card").click()
    page.get_by_label("Set the front band").check()
    page.get_by_role("button", name="Add to the card").click()
    page.get_by_role("link", name="Begin with the first step").click()
    for _ in range(3):
        page.locator(".uh-tick").last.click()
        page.wait_for_timeout(700)


def main() -> int:
    """Take every picture at a phone's size."""
    with served(SITE) as root, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path="/usr/bin/chromium")
        phone = {"width": 390, "height": 780}
        for take in (procedure, calculator, card):
            page = browser.new_context(viewport=phone, service_workers="block").new_page()
            take(page, root)
            page.wait_for_timeout(1500)
            page.screenshot(path=HERE / f"{take.__name__}.png")
        browser.close()
    return 0


if __name__ == "__main__":
    sys.exit(main())
