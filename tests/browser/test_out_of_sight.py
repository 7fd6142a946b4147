"""What a reader does not see yet costs a phone nothing until it is scrolled to."""

import pytest

pytestmark = pytest.mark.browser

LAST_IS_LAID_OUT = """() => {
    const parts = [...document.querySelectorAll(".uh-answer > section, .uh-used")];
    return parts.at(-1).firstElementChild.checkVisibility({contentVisibilityAuto: true});
}"""


def test_what_follows_an_answer_is_laid_out_when_somebody_scrolls_there(same_page, site_url):
    same_page.goto(f"{site_url}calculators/torque-units/")
    assert same_page.evaluate(LAST_IS_LAID_OUT) is False
    same_page.locator(".uh-used a").first.scroll_into_view_if_needed()
    same_page.wait_for_function(LAST_IS_LAID_OUT)
