"""Writing a page: the findings of `underhoist check`, the page of the build, the file unchanged."""

from __future__ import annotations

import json
import re
import shutil
import sys
from pathlib import Path

import pytest
from axe_core import findings
from draft_answers import drafted_at_the_desk
from draft_hands import (
    BAND,
    WITHOUT_PYTHON,
    begin_page,
    change_page,
    checked,
    new_page,
    stored,
    summary,
    text_field,
    turn_to,
    write,
)
from playwright.sync_api import expect

from underhoist.drafting.desk import Desk
from underhoist.drafting.difference import difference
from underhoist.drafting.sources import to_json

sys.path.insert(0, str(Path(__file__).parents[1] / "drafting"))

from cases import SMALLEST, all_cases, checked_on_disk, sources

pytestmark = pytest.mark.browser

# Asks the page's own thread, as the page does, but for every case in one go.
ASK_ALL = """async ([url, cases]) => {
    const {Desk} = await import(url);
    const desk = (window.desk ??= new Desk());
    desk.limit = 120_000;
    const results = [];
    for (const [file, text] of cases) {
        results.push(await desk.look(file, text));
        await desk.page();
    }
    return results;
}"""

# What else the page may ask, of one draft.
ASK_THE_REST = """async ([url, file, text]) => {
    const {Desk} = await import(url);
    const desk = (window.desk ??= new Desk());
    desk.limit = 120_000;
    await desk.look(file, text);
    return [await desk.page(), await desk.names(), await desk.difference(text, `${text}more\\n`)];
}"""

# The codes of the findings in each text, or why there are none.
ASK_HOSTILE = """async ([url, file, texts]) => {
    const {Desk} = await import(url);
    const desk = (window.desk ??= new Desk());
    desk.limit = 120_000;
    const told = [];
    for (const text of texts) {
        const looked = await desk.look(file, text).catch(({message}) => message);
        const codes = looked.own?.map(({code}) => code);
        const shown = codes && await desk.page().then(() => codes, ({message}) => message);
        told.push(shown ?? looked);
    }
    return told;
}"""

TOO_SLOW = """async ([url, file]) => {
    const {Desk} = await import(url);
    const desk = (window.desk ??= new Desk());
    desk.limit = 120_000;
    await desk.look(file, "x");
    desk.limit = 1;
    const slow = "---\\nkind: page\\n---\\n" + "[a](b) ".repeat(60_000);
    return await desk.look(file, slow).then(() => "", (error) => error.message);
}"""


@pytest.fixture(scope="module")
def asking(browser, browser_context_args, site_url):
    """A page whose thread writes for the smallest manual and stays up from test to test."""
    context = browser.new_context(**browser_context_args)
    page = context.new_page()
    body = to_json(sources())
    page.route("**/drafting/manual.json", lambda route: route.fulfill(body=body))
    page.goto(site_url)
    yield page
    context.close()


@pytest.fixture(scope="module")
def silent(browser, browser_context_args):
    """A page without Python, for what the page does with a text before any check."""
    context = browser.new_context(**browser_context_args)
    context.add_init_script(WITHOUT_PYTHON)
    yield context.new_page()
    context.close()


@pytest.fixture(scope="module")
def drafting(browser, browser_context_args, site, tmp_path_factory):
    """A page for what it does with an answer: the desk's Python gives it."""
    context = browser.new_context(**browser_context_args)
    page = context.new_page()
    drafted_at_the_desk(page, site, tmp_path_factory.mktemp("desk"))
    yield page
    context.close()


def found_as_on_disk(page, site_url, cases, folder):
    """Ask for every case: the findings are those of `underhoist check`."""
    asked = [(file, text) for _, file, text in cases]
    looked = page.evaluate(ASK_ALL, [f"{site_url}assets/drafting/desk.js", asked])
    disk = shutil.copytree(SMALLEST, folder)
    for (name, file, text), found in zip(cases, looked, strict=True):
        wanted = checked_on_disk(disk, file, text)
        assert found["own"] == [each for each in wanted if each["file"] == file], name
        assert found["elsewhere"] == [each for each in wanted if each["file"] != file], name


@pytest.fixture
def asked(asking):
    """Addresses that the page and its threads ask for during the test."""
    found: list[str] = []

    def note(request):
        found.append(request.url)

    asking.context.on("request", note)
    yield found
    asking.context.remove_listener("request", note)


def test_every_bad_example_has_in_the_browser_the_findings_of_the_check(
    asking, asked, site, site_url, tmp_path
):
    """Python comes back from the image: where that fails it is begun anew, with more wheels."""
    cases = all_cases()
    assert len(cases) >= 60, "too few cases to prove anything"
    asking.goto(site_url)  # Python is begun here, whatever was asked before
    found_as_on_disk(asking, site_url, cases, tmp_path / "manual")
    manifest = json.loads((site / "runtime" / "manifest.json").read_text(encoding="utf-8"))
    wheels = {url.removeprefix(site_url) for url in asked if "/runtime/wheel-" in url}
    assert wheels == set(manifest["drafting"])


def test_every_other_question_has_in_the_browser_the_answer_of_the_desk(asking, site_url, tmp_path):
    text = (SMALLEST / BAND).read_text(encoding="utf-8") + "\nMine.\n"
    url = f"{site_url}assets/drafting/desk.js"
    in_browser = asking.evaluate(ASK_THE_REST, [url, BAND, text])
    desk = Desk(sources(), tmp_path)
    desk.look(BAND, text)
    assert in_browser == [desk.page(), desk.names(), difference(text, f"{text}more\n")]
    assert "Mine." in in_browser[0]["html"]
    assert len(in_browser[1]) > 3
    assert "+more" in in_browser[2]


def test_a_check_that_takes_too_long_is_ended_and_one_without_the_image_answers(
    asking, site_url, tmp_path
):
    """What is begun anew starts Python from nothing, and finds what is found with the image."""
    aborted = []
    asking.route("**/runtime/image-*/*", lambda route: (aborted.append(1), route.abort()))
    said = asking.evaluate(TOO_SLOW, [f"{site_url}assets/drafting/desk.js", BAND])
    assert said == "it took too long. Part the page, or take out what is not text"
    found_as_on_disk(asking, site_url, all_cases()[::6], tmp_path / "manual")
    asking.unroute("**/runtime/image-*/*")
    assert aborted, "the image was not asked for"


def test_a_page_is_changed_with_its_findings_and_the_built_page_beside_it(same_page, site_url):
    change_page(same_page, site_url)
    expect(summary(same_page)).to_have_text("Nothing found in this page.")
    paper = same_page.get_by_role("region", name="The page as it will be")
    expect(paper.locator(".uh-steps > li").first).to_be_visible()
    expect(paper.locator("img").first).to_have_js_property("complete", True)
    assert paper.locator("img").first.evaluate("image => image.naturalWidth") > 0
    text = text_field(same_page).input_value()
    write(same_page, text.replace("## Steps", "## Steps\n\nTighten it to 12 lbf·ft.\n"))
    expect(summary(same_page)).to_have_text("1 finding that stops the build.")
    same_page.get_by_role("button", name="Line", exact=False).first.click()
    selected = "field => field.value.slice(field.selectionStart, field.selectionEnd)"
    assert text_field(same_page).evaluate(selected) == "12 lbf·ft"
    expect(same_page.locator(".uh-desk__found")).to_contain_text(
        "A torque in the text is a second copy of a value that stands at its fastener."
    )


def test_links_of_the_page_leave_the_draft_alone(drafting, site_url):
    change_page(drafting, site_url)
    links = drafting.locator(".uh-desk__paper a[href]")
    expect(links.first).to_be_attached()
    for link in links.all():
        assert link.get_attribute("target") == "_blank"
        assert link.get_attribute("rel") == "noopener"
        assert (link.get_attribute("href") or "").startswith(site_url)


def test_a_change_that_breaks_other_pages_names_them(drafting, site_url):
    change_page(drafting, site_url, "families/kestrel-3.md")
    text = text_field(drafting).input_value()
    write(drafting, text.replace("  band-seat:", "  band-seats:"))
    expect(drafting.locator(".uh-desk__findings h3", has_text="This change breaks")).to_be_visible()
    expect(drafting.locator(".uh-desk__findings")).to_contain_text(BAND)


def test_a_new_page_begins_with_what_only_its_author_knows(drafting, site_url):
    new_page(drafting, site_url, "Set the rear band")
    assert "title: Set the rear band\n" in text_field(drafting).input_value()
    expect(drafting.locator(".uh-desk__head code")).to_have_text("any-unit/set-the-rear-band.md")
    expect(summary(drafting)).to_contain_text("stop the build.")


def test_a_name_that_is_taken_or_cannot_be_is_refused(silent, site_url):
    turn_to(silent, site_url, "#new")
    silent.get_by_label("File in the manual").fill(BAND)
    silent.get_by_role("button", name="Begin").click()
    expect(silent.get_by_role("alert").filter(has_text="already")).to_have_text(
        f"The manual has {BAND} already. Choose “Change a page”, or another name."
    )
    silent.get_by_label("File in the manual").fill("../x")
    silent.get_by_role("button", name="Begin").click()
    expect(silent.locator("#draft-file-error")).to_contain_text("“../x” is no name for a page.")


PAN = "kestrel-3/drop-pan.md"
"""A page that no other test changes: its draft is the manual's own text."""

# Chooses, and tells whether the reference is written before the browser takes up another event.
WRITTEN_AT_ONCE = """async (choice, field) => {
    choice.click();
    for (let turn = 0; turn < 20; turn += 1) await null;
    return field.value.endsWith(">");
}"""


def test_the_buttons_write_what_the_steps_need(drafting, site_url):
    new_page(drafting, site_url, "Pasted", kind="Empty: I paste the text")
    field = text_field(drafting)
    field.click()
    field.press_sequentially("## Steps")
    drafting.get_by_role("button", name="Step", exact=True).click()
    field.press_sequentially("Seat the band to ")
    drafting.get_by_role("button", name="Refer to …").click()
    drafting.get_by_label("Words of its name").fill("adjuster seat")
    choice = drafting.get_by_role("dialog").get_by_role("listitem").get_by_role("button").first
    assert choice.evaluate(WRITTEN_AT_ONCE, field.element_handle()), "a key typed next comes after"
    expect(drafting.get_by_role("dialog")).to_have_count(0)
    field.press_sequentially(".")
    drafting.get_by_role("button", name="Why", exact=True).click()
    field.press_sequentially("It sets the zero.")
    wanted = (
        r"## Steps\n\n1\. Seat the band to <torque:[a-z0-9/-]+>\.\n\n    Why: It sets the zero\."
    )
    expect(field).to_have_value(re.compile(f"^{wanted}$"))
    written = field.input_value()
    field.press("Control+z")
    # The browser's own undo works on what the buttons wrote.
    expect(field).not_to_have_value(written)


def test_a_finding_is_mended_with_one_tap_and_taken_back_with_another(drafting, site_url):
    change_page(drafting, site_url, PAN)
    text = text_field(drafting).input_value()
    wrong = text.replace("minutes:", "minutos:", 1)
    write(drafting, wrong)
    expect(summary(drafting)).to_contain_text("1 finding that stops the build.")
    expect(drafting.locator(".uh-desk__found > li").first).to_contain_text("minutos")
    drafting.get_by_role("button", name="Mend this").click()
    expect(text_field(drafting)).to_have_value(text)
    expect(summary(drafting)).to_have_text("Nothing found in this page.")
    drafting.get_by_role("button", name="Undo").click()
    expect(text_field(drafting)).to_have_value(wrong)
    stored(drafting)


HARD = (
    '---\nkind: page\ntitle: "Öl, «½» 🔧 <b>&amp;</b>"\nsummary: x\n---\n'
    "\ttab  \n\n\nlast line without end"
)


def test_the_saved_file_has_the_bytes_that_were_written(silent, site_url):
    begin_page(silent, site_url, "Saved", kind="Empty: I paste the text")
    for text in (HARD, HARD + "\n", ""):
        write(silent, text)
        with silent.expect_download() as saving:
            silent.get_by_role("button", name="Save the file").click()
        assert saving.value.suggested_filename == "saved.md"
        assert Path(saving.value.path()).read_bytes() == text.encode()


SHARES = """() => {
    navigator.canShare = ({files}) => files.length === 1;
    navigator.share = async ({files: [file]}) => {
        window.shared = [file.name, file.type, [...new Uint8Array(await file.arrayBuffer())]];
    };
}"""


def test_the_shared_file_has_the_bytes_that_were_written(silent, site_url):
    turn_to(silent, site_url, "")
    silent.evaluate(SHARES)
    begin_page(silent, site_url, "Shared", kind="Empty: I paste the text")
    write(silent, HARD)
    silent.get_by_role("button", name="Share the file").click()
    silent.wait_for_function("() => window.shared")
    name, kind, content = silent.evaluate("window.shared")
    assert (name, kind, bytes(content)) == ("shared.md", "text/markdown", HARD.encode())
    silent.evaluate("() => { delete navigator.canShare; delete navigator.share; }")


PLAIN = "---\nkind: page\ntitle: x\nsummary: x\n---\n"
HOSTILE = {
    "script": (
        "<script>window.hit = 1</script><img src=x onerror='window.hit = 1'>",
        "front-matter",
    ),
    "image": (f"{PLAIN}<img src=x onerror='window.hit = 1'>\n", None),
    "address": (f"{PLAIN}[a](javascript:window.hit=1)\n", "outside-manual"),
    "binary": ("\0\1\2" * 50, "unreadable-page"),
    "brackets": ("---\nkind: page\ntitle: " + "[" * 3000 + "\n---\n", "front-matter"),
    "quotes": (PLAIN + "> " * 3000 + "x\n", None),
    "links": (PLAIN + "[" * 20_000 + "\n", None),
    "huge": ("a line of forty signs, as people write\n" * 30_000, "unreadable-page"),
}


def test_hostile_text_is_found_by_the_browsers_own_python_or_it_is_said_why_not(asking, site_url):
    texts = [text for text, _ in HOSTILE.values()]
    url = f"{site_url}assets/drafting/desk.js"
    told = asking.evaluate(ASK_HOSTILE, [url, "any-unit/hostile.md", texts])
    for (name, (_, code)), found in zip(HOSTILE.items(), told, strict=True):
        assert code in found if code else found, name


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_text_is_a_finding_or_nothing_never_run_and_never_lost(
    drafting, site_url, errors, name
):
    text, code = HOSTILE[name]
    way = begin_page(drafting, site_url, f"Hostile {name}", kind="Empty: I paste the text")
    put(drafting, text)
    stored(drafting)
    turn_to(drafting, site_url, "")
    turn_to(drafting, site_url, way)  # read from the store anew
    expect(text_field(drafting)).to_have_value(text)
    checked(drafting)
    words = re.compile(r"finding" if code else r"finding|Nothing found")
    expect(summary(drafting)).to_have_text(words)
    assert drafting.evaluate("window.hit") is None
    assert errors == []


@pytest.fixture
def errors(drafting):
    """What goes wrong in the page during the test."""
    found: list[str] = []

    def note(error):
        found.append(str(error))

    drafting.on("pageerror", note)
    yield found
    drafting.remove_listener("pageerror", note)


def put(page, text):
    """Put the text in at once: a long one takes the test's own way of typing half a minute."""
    script = "(field, text) => { field.value = text; field.dispatchEvent(new Event('input')); }"
    text_field(page).evaluate(script, text)


def test_a_long_text_is_pasted_without_delay(silent, site_url):
    begin_page(silent, site_url, "A long text", kind="Empty: I paste the text")
    text = "Forty signs stand on each of these line\n" * 5_000
    took = text_field(silent).evaluate(
        """(field, text) => {
            const clipboardData = new DataTransfer();
            clipboardData.setData("text/plain", text);
            const begin = performance.now();
            field.dispatchEvent(new ClipboardEvent("paste", {clipboardData, cancelable: true}));
            return performance.now() - begin;
        }""",
        text,
    )
    assert took < 1000
    expect(text_field(silent)).to_have_value(text)
    stored(silent)


def test_far_too_much_is_not_put_in_and_that_is_said(silent, site_url):
    begin_page(silent, site_url, "Far too much", kind="Empty: I paste the text")
    text_field(silent).evaluate(
        """field => {
            const clipboardData = new DataTransfer();
            clipboardData.setData("text/plain", "x".repeat(3_000_000));
            field.dispatchEvent(new ClipboardEvent("paste", {clipboardData, cancelable: true}));
        }"""
    )
    expect(silent.get_by_role("alert").last).to_have_text(
        "Nothing was put in: that text holds 3.0 MB, and a page holds at most 1 MB."
    )
    expect(text_field(silent)).to_have_value("")


def test_axe_finds_nothing_while_a_page_is_written(drafting, site_url):
    """Here and not beside the other kinds of page: the manual is laid out already."""
    turn_to(drafting, site_url, "#change")
    assert findings(drafting) == []
    change_page(drafting, site_url)
    text = text_field(drafting).input_value()
    write(drafting, text.replace("minutes:", "minutos:", 1))
    drafting.get_by_role("button", name="Mend this").wait_for()
    assert findings(drafting) == []
    drafting.get_by_role("button", name="Earlier texts").click()
    assert findings(drafting) == []
    drafting.get_by_role("button", name="Refer to …").click()
    drafting.get_by_role("dialog").get_by_role("listitem").first.wait_for()
    assert findings(drafting) == []
    drafting.keyboard.press("Escape")
    expect(drafting.get_by_role("dialog")).to_have_count(0)
    turn_to(drafting, site_url, "#new")
    assert findings(drafting) == []


def test_the_page_weighs_no_more_than_its_texts(site):
    manual = json.loads((site / "drafting" / "manual.json").read_text(encoding="utf-8"))
    assert BAND in manual["pages"]
    assert all(isinstance(text, str) for text in manual["pages"].values())
    assert not any(file.endswith(".svg") for file in manual["pages"])
