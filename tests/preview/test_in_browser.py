"""The previewed page in a browser: it follows the file, stays at its spot, leaves others alone."""

import urllib.request

import pytest

pytestmark = pytest.mark.browser

# Counts how often a page was loaded, and marks when it has begun to follow.
WATCH = """
sessionStorage.loads = Number(sessionStorage.loads ?? 0) + 1;
const Source = window.EventSource;
window.EventSource = class extends Source {
    constructor(url) {
        super(url);
        this.addEventListener("now", () => { window.follows = true; });
    }
};
"""


@pytest.fixture
def follows(previewed, page):
    """Opens a page and waits until it follows its file."""

    def opened(way):
        page.add_init_script(WATCH)
        page.goto(f"http://127.0.0.1:{previewed.port}/{way}")
        page.wait_for_function("() => window.follows")

    return opened


def test_it_follows_and_stays_at_its_spot(previewed, page, follows):
    follows("jobs/set-band/")
    page.evaluate("scrollTo(0, 500)")
    previewed.replace("jobs/set-band.md", "Judge it on the road.", "Judge it on a quiet road.")
    page.wait_for_selector("text=Judge it on a quiet road.")
    page.wait_for_function("() => Math.abs(scrollY - 500) < 2")


def test_a_page_that_reads_as_before_is_not_loaded_again(previewed, page, follows):
    follows("tools/lamp/")
    changes = f"http://127.0.0.1:{previewed.port}/_preview/changes?page=/tools/lamp/"
    with urllib.request.urlopen(changes) as told:
        assert told.readline() == b"event: now\n"
        assert told.readline().startswith(b"data: ") and told.readline() == b"\n"
        previewed.replace("jobs/set-band.md", "Wipe the case.", "Polish the case.")
        assert told.readline() == b": nothing\n"
    assert page.evaluate("sessionStorage.loads") == "1"
    previewed.replace("jobs/set-band.md", "<torque:band-seat>", "<torque:band-set>")
    page.wait_for_selector("text=in the manual")
    assert page.evaluate("sessionStorage.loads") == "2"
