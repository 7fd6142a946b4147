"""What stands on a page already is not drawn again: the first answer is mostly the page's own."""

import pytest
from desk_answers import answered_at_the_desk
from test_calculators import BOOT
from underhoist_calculators import all_calculators

pytestmark = pytest.mark.browser

# Random trees, by a generator that draws alike at every run; what is equal is known by its mark.
TREES = """async (module) => {
    const { redraw } = await import(module);
    let seed = 1;
    const draw = (below) => (seed = (seed * 48271) % 2147483647) % below;
    const grow = (depth) => {
        if (depth === 0 || draw(4) === 0) return document.createTextNode("abc"[draw(3)]);
        const made = document.createElement(["p", "b"][draw(2)]);
        if (draw(3) === 0) made.className = "xy"[draw(2)];
        for (let left = draw(4); left > 0; left -= 1) made.append(grow(depth - 1));
        return made;
    };
    const wrong = [];
    for (let turn = 0; turn < 2000; turn += 1) {
        const [place, fresh] = [0, 1].map(() => {
            const made = document.createElement("div");
            for (let left = draw(5); left > 0; left -= 1) made.append(grow(3));
            return made;
        });
        const [before, wanted] = [place.innerHTML, fresh.cloneNode(true)];
        redraw(place, fresh);
        if (!place.isEqualNode(wanted)) wrong.push([before, wanted.innerHTML, place.innerHTML]);
    }
    return wrong;
}"""
KEPT = """async (module) => {
    const { redraw } = await import(module);
    const place = document.createElement("div");
    place.innerHTML = "<p>1</p><ul><li>old</li><li>same</li></ul><p>2</p>";
    const [first, list, last] = place.children;
    const [changed, same] = list.children;
    const fresh = document.createElement("div");
    fresh.innerHTML = "<p>1</p><ul><li>new</li><li>same</li></ul><p>between</p><p>2</p>";
    const nearer = document.createElement("div");
    nearer.innerHTML = "<p>1</p><ul><li>new</li><li>same</li></ul><p>2</p>";
    redraw(place, nearer);
    const near = [...place.children].every((each, at) => each === [first, list, last][at])
        && list.children[0] === changed && list.children[1] === same;
    redraw(place, fresh);
    const far = [first, list, last].map((each, at) => each === place.children[[0, 1, 3][at]]);
    return [near, ...far];
}"""
WATCH = """(selector) => {
    window.changes = [];
    new MutationObserver((all) => window.changes.push(...all.map(({ target }) => target.className)))
        .observe(document.querySelector(selector), {
            childList: true, subtree: true, characterData: true,
        });
}"""


@pytest.fixture
def module(same_page, site_url):
    same_page.goto(site_url)
    return f"{site_url}assets/phone/redraw.js"


def test_a_place_holds_what_the_fresh_one_held(same_page, module):
    assert same_page.evaluate(TREES, module) == []


def test_what_is_equal_stays_the_same_node(same_page, module):
    assert same_page.evaluate(KEPT, module) == [True, True, True, True]


def early(page, address, selector):
    """Open a page and watch its answer before Python can be up."""
    page.goto(address, wait_until="domcontentloaded")
    page.evaluate(WATCH, selector)


@pytest.fixture
def answered(same_page):
    """The page that tests share, answered at the desk until the test is over."""
    answered_at_the_desk(same_page)
    yield same_page
    same_page.goto("about:blank")  # nothing asks any more
    same_page.unroute_all()


@pytest.mark.parametrize("name", [each.name for each in all_calculators()])
def test_the_first_answer_changes_nothing_of_the_page_s_own(answered, site_url, name):
    page = answered
    early(page, f"{site_url}calculators/{name}/", ".uh-answer")
    page.wait_for_selector("#calculator[data-answered=yes]", timeout=BOOT)
    assert page.evaluate("window.changes") == []


def test_the_first_answer_of_the_page_s_own_thread_changes_nothing(page, site_url):
    early(page, f"{site_url}calculators/shift-check/", ".uh-answer")
    page.wait_for_selector("#calculator[data-answered=yes]", timeout=BOOT)
    assert page.evaluate("window.changes") == []


def test_the_first_order_brings_its_buttons_and_nothing_else(page, site_url):
    early(page, f"{site_url}faults/late-shifts/", ".uh-standing")
    page.locator(".uh-others summary").first.click()
    page.wait_for_selector("#fault[data-answered=yes]", timeout=BOOT)
    own = {"uh-standing__drawn", "uh-standing__outlook", "uh-next__results", ""}
    assert set(page.evaluate("window.changes")) <= own
    assert page.locator(".uh-others details").first.evaluate("(one) => one.open")
    assert page.locator(".uh-result").count() >= 3
