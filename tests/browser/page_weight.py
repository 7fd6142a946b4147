"""What a page of a site weighs: its HTML, CSS and JS, compressed, without calculators' runtime."""

import gzip
from functools import cache
from pathlib import Path

from playwright.sync_api import Page, Request


@cache
def packed(file: Path) -> int:
    """Bytes of a file as a host sends it; most files are of many pages."""
    return len(gzip.compress(file.read_bytes(), 9))


def weight(page: Page, site: Path, site_url: str, address: str) -> dict[str, int]:
    """Open a page; bytes of each file that it loads, compressed as a host does it."""
    weighed: dict[str, int] = {}

    def weigh(request: Request) -> None:
        wanted = request.resource_type in {"document", "stylesheet", "script"}
        if wanted and request.url.startswith(site_url) and "/runtime/" not in request.url:
            path = request.url.removeprefix(site_url).partition("?")[0]
            file = site / path / "index.html" if path.endswith("/") or not path else site / path
            weighed[path] = packed(file)

    page.on("request", weigh)
    page.goto(site_url + address)
    page.wait_for_load_state("networkidle")
    page.remove_listener("request", weigh)
    return weighed
