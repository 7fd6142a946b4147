"""A page is written without a network: everything it needs was stored at the first visit."""

from __future__ import annotations

import pytest
from draft_hands import change_page, new_page, summary, text_field, write
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

BOOT = 120_000


def test_a_page_is_written_with_the_server_gone(phone, server):
    page = phone.new_page()
    page.goto(server.url)
    page.wait_for_selector("html[data-runtime-stored]", state="attached", timeout=BOOT)
    server.stop()
    change_page(page, server.url)
    text = text_field(page).input_value()
    write(page, text.replace("minutes:", "minutos:", 1))
    expect(summary(page)).to_contain_text("1 finding that stops the build.")
    image = page.locator(".uh-desk__paper img").first
    expect(image).to_have_js_property("complete", True)
    assert image.evaluate("image => image.naturalWidth") > 0
    new_page(page, server.url, "Set the rear band")
    written = text_field(page).input_value().replace("???", "x", 1)
    write(page, written)
    page.reload()
    expect(text_field(page)).to_have_value(written)
