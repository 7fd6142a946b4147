"""The search finds pages by anybody's words, typed with a slip, without a network or a mouse."""

import re
from html import unescape
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from underhoist.check import check
from underhoist.lexicon import many

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
WORDS = check(ROOT / "procedures").manual.words
ASK = """async (questions) => {
  const { Search } = await import(new URL("assets/search/answer.js", location.href).href);
  window.search ??= new Search(await (await fetch("search/index.json")).json());
  return questions.map((question) => {
    const began = performance.now();
    return { ...search.ask(question), took: performance.now() - began };
  });
}"""
SET_BAND = "kestrel-3/set-band/"


def asked(page: Page, site_url: str, *questions: str) -> list[dict]:
    """Ask the search's own module in the browser, as its worker does."""
    if page.url != site_url + "404.html":
        page.goto(site_url + "404.html")
    return page.evaluate(ASK, list(questions))


def addresses(answer: dict) -> list[str]:
    return [each["address"] for each in answer["found"]]


def joined(name: str) -> str:
    return re.sub(r"[^a-z]", "", name.casefold())


def says(site: Path, address: str, word: str) -> bool:
    """Whether a page's text holds a word, one or many."""
    html = (site / address / "index.html").read_text(encoding="utf-8")
    main = re.search(r"<main.*</main>", html, re.DOTALL)
    text = " ".join(unescape(re.sub(r"<[^>]*>", "", main[0] if main else "")).casefold().split())
    return any(each.casefold() in text for each in (word, many(word)))


def test_every_declared_name_finds_a_page_that_says_our_word(
    same_page: Page, site: Path, site_url: str
) -> None:
    names = [(other.value, ours) for ours, word in WORDS.items() for other in word.also]
    heard = [(other.value, ours) for ours, word in WORDS.items() for other in word.heard]
    answers = asked(same_page, site_url, *(other for other, _ in (*names, *heard)))
    lost = [
        f"{other}: {ours}"
        for (other, ours), answer in zip((*names, *heard), answers, strict=True)
        if not any(says(site, each, ours) for each in addresses(answer) if each != "words/")
    ]
    assert lost == []
    assert len(names) >= 50


def test_every_other_name_is_answered_with_our_word(same_page: Page, site_url: str) -> None:
    names = [
        (each.value, ours)
        for ours, word in WORDS.items()
        for each in word.also
        if joined(each.value) != joined(ours)  # kickdown for kick-down is nothing to be told
    ]
    answers = asked(same_page, site_url, *(other for other, _ in names))
    for (other, ours), answer in zip(names, answers, strict=True):
        understood = [(each["ours"], each["sure"]) for each in answer["understood"]]
        assert (ours, True) in understood, other


SLIPS = {
    "modualtor": "modulator", "moduator": "modulator", "modulattor": "modulator",
    "modulater": "modulator", "bnad": "band", "gaskt": "gasket", "gaslet": "gasket",
    "propshfat": "propshaft", "governr": "governor", "speedometr": "speedometer",
    "thermomter": "thermometer", "fliter": "filter", "magnte": "magnet",
}  # fmt: skip


@pytest.mark.parametrize(("slip", "word"), SLIPS.items())
def test_a_slip_of_the_finger_finds_the_same_first_page(
    same_page: Page, site_url: str, slip: str, word: str
) -> None:
    wrong, right = asked(same_page, site_url, slip, word)
    assert addresses(wrong)[:1] == addresses(right)[:1] != []
    assert wrong["understood"][0]["read"].split(", ")[0] == word


ALIKE = [
    ("bush", "bushes"), ("bushing", "bushings"), ("kick-down", "kickdown"),
    ("kick-down", "kick down"), ("tail housing", "tail-housing"), ("tail housing", "tailhousing"),
    ("locknut", "lock nut"), ("120 in-lb", "120 in lb"), ("bushing", "bushng"),
    ("tail housing", "tail housng"), ("gasket", "GASKET"), ("bush", '"bush"'),
]  # fmt: skip


@pytest.mark.parametrize(("one", "other"), ALIKE)
def test_spellings_of_one_thing_find_the_same(
    same_page: Page, site_url: str, one: str, other: str
) -> None:
    first, second = asked(same_page, site_url, one, other)
    assert addresses(first)[:1] == addresses(second)[:1] != []


FINDS = {
    "set the front band": SET_BAND,
    "Set the front band": SET_BAND,
    "front band set": SET_BAND,
    "shifts up late": "faults/late-shifts/",
    "seal puller": "tools/seal-puller/",
    "it leaves a puddle": "faults/leaks-by-place/",
    "rear seal kestrel 3": "parts/kestrel-3/rear-seal/",
    "hot fluid": "hazards/hot-fluid/",
    "staged fill": "calculators/staged-fill/",
    "modul": "hazards/hose-before-modulator/",
}


@pytest.mark.parametrize(("question", "address"), FINDS.items())
def test_the_page_that_is_meant_stands_first(
    same_page: Page, site_url: str, question: str, address: str
) -> None:
    (answer,) = asked(same_page, site_url, question)
    assert addresses(answer)[0] == address


@pytest.mark.parametrize("question", ["shifts late", "shifting late", "it is late, the shift"])
def test_the_owners_words_find_the_faults_that_begin_so(
    same_page: Page, site_url: str, question: str
) -> None:
    (answer,) = asked(same_page, site_url, question)
    faults = {"faults/late-shifts/", "faults/smoke-and-late-shifts/"}
    assert set(addresses(answer)[:2]) == faults


@pytest.mark.parametrize("question", ["120 lbf·in", "120 in-lb", "120 in lb", "120 inch-pounds"])
def test_a_value_is_found_in_whatever_way_its_unit_is_said(
    same_page: Page, site_url: str, question: str
) -> None:
    (answer,) = asked(same_page, site_url, question)
    assert SET_BAND in addresses(answer)[:4]
    spots = next(each["spots"] for each in answer["found"] if each["address"] == SET_BAND)
    assert spots[0]["at"].startswith("step-")


HOSTILE = [
    "x" * 10_000, "bush " * 2_000, "a-" * 5_000, "(((((((((((", ".*+?^${}()|[]\\", "__proto__",
    "constructor", "' OR 1=1 --", "\u0000\ud800", "👩‍🔧" * 50, "1/" * 5_000, "the the the",
]  # fmt: skip


def test_hostile_questions_are_answered_at_once(same_page: Page, site_url: str) -> None:
    for question, answer in zip(HOSTILE, asked(same_page, site_url, *HOSTILE), strict=True):
        assert answer["took"] < 1000, question[:40]
        assert answer["count"] >= 0


def test_typing_finds_a_page_and_leads_to_it(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + "search.html")
    same_page.keyboard.type("front band")
    result = same_page.locator("#results a", has_text="Set the front band").first
    expect(result).to_be_visible()
    expect(same_page.locator("#found")).to_have_text(re.compile(r"^(One page|\d+ pages) found"))
    result.click()
    expect(same_page).to_have_url(site_url + SET_BAND)


def test_which_word_was_understood_is_said_and_linked(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + "search.html?q=bushng")
    understood = same_page.locator("#understood")
    expect(understood).to_have_text("bushng, read as bushing: we say bush.")
    understood.locator("a").click()
    expect(same_page).to_have_url(site_url + "words/#word-bush")
    expect(same_page.locator("#word-bush")).to_be_in_viewport()


def test_a_name_that_may_mean_something_else_is_said_so(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + "search.html?q=gas")
    expect(same_page.locator("#understood")).to_have_text(
        "gas: we may say gas fuel. gas: we may say petrol."
    )


def test_a_result_leads_to_the_step(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + "search.html?q=locknut")
    step = same_page.locator("#results ul a", has_text=re.compile(r"^Step \d+")).first
    number = re.match(r"Step (\d+)", step.text_content() or "")
    assert number
    step.click()
    expect(same_page).to_have_url(re.compile(rf"#step-{number[1]}$"))
    expect(same_page.locator(f"#step-{number[1]}")).to_be_in_viewport()


def test_the_keyboard_alone_reaches_a_result(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + "search.html")
    same_page.keyboard.type("front band")
    expect(same_page.locator("#results a").first).to_be_visible()
    same_page.keyboard.press("Tab")
    same_page.keyboard.press("Tab")
    expect(same_page.locator("#results a").first).to_be_focused()
    same_page.keyboard.press("Enter")
    expect(same_page).to_have_url(site_url + SET_BAND)


def test_nothing_found_is_said_with_what_to_do_next(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + "search.html?q=zeppelin")
    expect(same_page.locator("#found")).to_have_text(
        "Nothing found for “zeppelin”. Try one word, or the trade's other word for it."
    )
    assert same_page.locator("#results li").count() == 0


def test_pages_with_most_of_the_words_are_shown_and_it_is_said(
    same_page: Page, site_url: str
) -> None:
    same_page.goto(site_url + "search.html?q=zeppelin+band")
    expect(same_page.locator("#found")).to_have_text(
        re.compile(r"^No page has all these words\. \d+ pages with most of them")
    )


def test_an_emptied_field_shows_nothing(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + "search.html?q=bushing")
    expect(same_page.locator("#results li").first).to_be_visible()
    same_page.locator("#words").fill("")
    expect(same_page.locator("#results li")).to_have_count(0)
    expect(same_page.locator("#found")).to_have_text("")
    expect(same_page.locator("#understood")).to_be_hidden()


def test_the_question_stands_in_the_address(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + "search.html")
    same_page.locator("#words").fill("seal")
    expect(same_page).to_have_url(site_url + "search.html?q=seal")
    same_page.reload()
    expect(same_page.locator("#words")).to_have_value("seal")
    expect(same_page.locator("#results li").first).to_be_visible()


def test_an_index_that_cannot_be_read_is_said_and_tried_again(page: Page, site_url: str) -> None:
    page.context.route("**/search/index.json", lambda route: route.abort())
    page.goto(site_url + "search.html?q=band")
    expect(page.locator("#found")).to_have_text(
        "The search index could not be read. "
        "Open this page once with a connection, then it is stored."
    )
    page.context.unroute("**/search/index.json")
    page.locator("#search button").click()
    expect(page.locator("#results li").first).to_be_visible()


SHOW = """async ([first, second]) => {
  const { Search } = await import(new URL("assets/search/answer.js", location.href).href);
  const { showAnswer } = await import(new URL("assets/search/results.js", location.href).href);
  const search = new Search(await (await fetch("search/index.json")).json());
  showAnswer(search.ask(first), first);
  const atOnce = document.querySelectorAll("#results > li").length;
  showAnswer(search.ask(second, 10), second);
  await new Promise((done) => setTimeout(done, 1000)); // more than the first answer would need
  return [atOnce, search.ask(second, 10).found.length];
}"""


def test_a_long_answer_is_drawn_bit_by_bit_until_another_is_shown_whose_word_is_too_common(
    same_page: Page, site_url: str
) -> None:
    same_page.goto(site_url + "search.html?q=band")
    expect(same_page.locator("#results > li")).to_have_count(30)
    at_once, count = same_page.evaluate(SHOW, ["band", "fluid"])
    assert at_once == 4
    expect(same_page.locator("#results > li")).to_have_count(count)
    expect(same_page.locator("#understood")).to_have_text(
        "fluid: in too many places to look at each. A word that tells more finds more."
    )


def test_markup_in_the_question_stays_words(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + "search.html")
    same_page.locator("#words").fill("<img onerror=zeppelin>")
    same_page.locator("#words").fill("<img-zeppelin>")
    expect(same_page.locator("#found")).to_contain_text("Nothing found for “<img-zeppelin>”")
    assert same_page.locator(".uh-found img, #results img").count() == 0


def test_without_script_the_lists_are_named(browser, site: Path, site_url: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(site_url + "search.html")
    links = page.locator("noscript + a, main ul.uh-contents a")
    assert links.count() == 6
    for link in links.all():
        assert (site / (link.get_attribute("href") or "") / "index.html").is_file()
    context.close()
