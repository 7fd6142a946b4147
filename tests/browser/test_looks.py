"""What the reader's eye and thumb need, measured on the built site."""

import json
import re
from pathlib import Path

import card_hands
import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

HERE = Path(__file__).parent
STYLES = HERE.parents[1] / "site_overrides" / "assets" / "styles"
KINDS: dict[str, str] = json.loads((HERE / "kinds.json").read_text())
PLATES = """plates => plates.map(plate => {
    const number = plate.querySelector(".uh-plate__number");
    const unit = plate.querySelector(".uh-plate__unit");
    return {
        size: parseFloat(getComputedStyle(number).fontSize),
        unit: unit.innerText.trim(),
        below: unit.getBoundingClientRect().y >= number.getBoundingClientRect().y,
    };
})"""
UNIT_WORDS = re.compile(r"[a-z][a-z /-]{4,}( \([a-z ]+\))?", re.IGNORECASE)


def sizes(page: Page, selector: str) -> list[tuple[str, float, float]]:
    """Words, width and height of every visible element of the selector."""
    return [
        (found["words"], found["width"], found["height"])
        for found in page.eval_on_selector_all(
            selector,
            """all => all.map(e => [e, e.getBoundingClientRect()]).filter(([, r]) => r.width > 0)
              .map(([e, r]) => ({
                words: e.textContent.trim(), width: r.width, height: r.height}))""",
        )
    ]


def style(page: Page, selector: str, name: str) -> str:
    return page.eval_on_selector(selector, f"e => getComputedStyle(e).{name}")


def test_text_is_eighteen_pixels_at_one_and_a_half(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + KINDS["procedure"])
    assert style(same_page, "body", "fontSize") == "18px"
    assert style(same_page, "body", "lineHeight") == "27px"


def test_our_own_type_is_used(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + KINDS["procedure"])
    same_page.evaluate("document.fonts.ready")
    loaded = same_page.evaluate("[...document.fonts].filter(f => f.status === 'loaded').length")
    assert loaded >= 1
    assert "Atkinson Hyperlegible Next" in style(same_page, "body", "fontFamily")


@pytest.mark.parametrize("width", [320, 360, 390])
def test_head_links_fit_a_thumb(same_page: Page, site_url: str, width: int) -> None:
    same_page.set_viewport_size({"width": width, "height": 640})
    same_page.goto(site_url + KINDS["procedure"])
    found = sizes(same_page, "header nav a, header button")
    assert len(found) == 6
    assert all(wide >= 44 and high >= 44 for _, wide, high in found), found


def test_the_tick_is_sixty_four_pixels_in_sight_at_the_thumb(page: Page, site_url: str) -> None:
    card_hands.begun_card(page, site_url, "set-band")
    for width, height in [(360, 640), (390, 844), (1280, 800)]:
        page.set_viewport_size({"width": width, "height": height})
        box = card_hands.tick(page).bounding_box()
        assert box is not None
        assert (round(box["width"]), round(box["height"])) == (64, 64)
        assert height * 0.6 < box["y"] < height - 64, "in the lower part of the screen"
        if width < 1000:
            assert box["x"] > width / 2, "under the right thumb"
        assert page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("kind", ["procedure", "torque", "torque-units", "staged-fill"])
def test_a_plate_cannot_be_misread(same_page: Page, site_url: str, kind: str) -> None:
    """Number at 30 px or more, its unit in words below it."""
    same_page.goto(site_url + KINDS[kind])
    plates = same_page.eval_on_selector_all(".uh-plate", PLATES)  # at once: answers are replaced
    assert len(plates) >= 1
    for plate in plates:
        assert plate["size"] >= 30
        assert UNIT_WORDS.fullmatch(plate["unit"]), plate["unit"]
        assert plate["below"], "the unit stands below its number"


def test_cautions_carry_word_and_shape_in_words_of_the_standard(
    same_page: Page, site_url: str
) -> None:
    same_page.goto(site_url + KINDS["procedure"])
    words = same_page.locator(".uh-hazard__word")
    assert words.count() >= 1
    for word in words.all():
        assert word.inner_text().strip().upper() in {"DANGER", "WARNING", "CAUTION", "NOTICE"}
        assert word.locator("svg").count() == 1


def test_light_is_the_default_even_where_the_system_is_dark(same_page: Page, site_url: str) -> None:
    same_page.emulate_media(color_scheme="dark")
    same_page.goto(site_url)
    assert style(same_page, "body", "backgroundColor") == "rgb(251, 248, 241)"


def test_the_chosen_paper_is_remembered_on_every_page(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url)
    same_page.get_by_role("button", name="Dark paper").click()
    assert style(same_page, "body", "backgroundColor") == "rgb(16, 27, 33)"
    same_page.goto(site_url + KINDS["procedure"])
    assert style(same_page, "body", "backgroundColor") == "rgb(16, 27, 33)"
    same_page.get_by_role("button", name="Light paper").click()
    same_page.reload()
    assert style(same_page, "body", "backgroundColor") == "rgb(251, 248, 241)"


def test_nothing_moves() -> None:
    text = "".join(file.read_text() for file in STYLES.glob("*.css"))
    assert len(text) > 10_000
    assert not re.search(r"\b(animation|transition|scroll-behavior)\b", text)


@pytest.mark.parametrize("kind", ["procedure", "family", "torque-units"])
def test_paper_is_black_on_white_and_carries_its_title_block(
    new_page: Page, site_url: str, kind: str
) -> None:
    page = new_page
    page.add_init_script("localStorage.setItem('paper', 'dark')")
    page.goto(site_url + KINDS[kind])
    page.emulate_media(media="print")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert style(page, "main", "color") == "rgb(0, 0, 0)"
    assert style(page, ".uh-block__printed", "display") == "block"
    assert re.fullmatch(r"\d{1,2} \w+ \d{4}", page.locator("#printed").inner_text())
    expect(page.locator("header nav")).to_be_hidden()
    assert "law" in page.evaluate("document.documentElement.style.getPropertyValue('--foot')")


def test_links_on_paper_say_where_they_lead(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + KINDS["procedure"])
    same_page.evaluate("dispatchEvent(new Event('beforeprint'))")
    codes = same_page.locator(".uh-follows a").evaluate_all("all => all.map(a => a.dataset.code)")
    assert codes
    assert all(re.fullmatch(r"[\w-]+(/[\w-]+)*", code) for code in codes), codes


def test_a_step_on_paper_has_a_square_to_write_in(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + KINDS["procedure"])
    same_page.emulate_media(media="print")
    square = "e => getComputedStyle(e, '::after').width"
    width = same_page.eval_on_selector(".uh-step", square)
    assert 20 <= float(width.removesuffix("px")) <= 40
