"""What is handed over: every case in the file, its size with and without calculators, the book.

Called as: python benchmarks/handout.py. Prints one line a measurement; exit code 1 where a case
gives another answer or a page number of the book's contents is wrong.
"""

import json
import shutil
import sys
import tempfile
import time
from io import BytesIO
from pathlib import Path

from playwright.sync_api import Page, expect, sync_playwright
from pypdf import PdfReader

from underhoist.book import book
from underhoist.book.numbers import read
from underhoist.bound import Choice, chosen, name_of, source
from underhoist.pack import pack
from underhoist.pages import Sheet, Site

ROOT = Path(__file__).resolve().parents[1]
CASES = ROOT / "tests" / "published" / "door_cases.json"
MODULES = ROOT / "node_modules"
QUIET = ["--no-sandbox", "--disable-gpu", "--no-first-run"]
BOOT, SOON = 60_000, 10_000  # ms


TYPE = """(form, entries) => {
    const fields = [...form.elements].filter((each) => each.name);
    for (const field of fields) {
        if (field.name in entries) field.value = entries[field.name];
        else if (!field.name.endsWith(".unit")) field.value = "";
    }
    fields[0].dispatchEvent(new Event("input", {bubbles: true}));
}"""
"""Types the entries into the form, as somebody would who leaves the units as they are."""


def ask_all(page: Page, address: str) -> tuple[int, list[str]]:
    """Ask every case that has an answer; return how many, and the wrong ones."""
    cases = json.loads(CASES.read_text(encoding="utf-8"))
    cases = [case for case in cases if case["ok"] and case["summary"]]
    wrong: list[str] = []
    for case in cases:
        page.goto(f"{address}#calculators/{case['calculator']}")
        here = page.locator(f'div[data-calculator="{case["calculator"]}"]')
        here.locator("form").evaluate(TYPE, case["entries"])
        try:
            expect(here.locator(".uh-answer__summary")).to_have_text(case["summary"], timeout=SOON)
        except AssertionError:
            wrong.append(case["name"])
    return len(cases), wrong


def first_answer(page: Page, address: str) -> tuple[float, float]:
    """Seconds from opening the file to its text, and to the first answer of a calculator."""
    start = time.perf_counter()
    page.goto(f"{address}#calculators/torque-units?torque=90+lbf*in", wait_until="commit")
    page.wait_for_selector("h1")
    text = time.perf_counter() - start
    page.wait_for_selector("[data-answered=yes]", timeout=BOOT)
    return text, time.perf_counter() - start


def the_file(site: Site, sheets: list[Sheet], folder: Path) -> list[str]:
    """Measure the file; return what is wrong."""
    for calculators in (False, True):
        made = pack(site, sheets, MODULES, calculators=calculators)
        size = len(made.text.encode()) / 1e6
        said = "with calculators" if calculators else "for reading only"
        print(f"{made.pages} pages in one file, {said}: {size:.1f} MB")
    file = folder / "manual.html"
    file.write_text(made.text, encoding="utf-8")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=QUIET)
        page = browser.new_page(viewport={"width": 390, "height": 844})
        text, answer = first_answer(page, file.as_uri())
        print(f"opened from the disk: text after {text:.1f} s, first answer after {answer:.1f} s")
        count, wrong = ask_all(page, file.as_uri())
        browser.close()
    print(f"{count - len(wrong)} of {count} cases are answered as at the desk")
    return wrong


def the_book(site: Site, sheets: list[Sheet]) -> list[str]:
    """Print the whole manual; return the entries of its contents that name a wrong page."""
    start = time.perf_counter()
    made = book(site, sheets, MODULES)
    print(f"a book of {made.leaves} pages of paper in {time.perf_counter() - start:.0f} s")
    numbers = read(made.pdf)
    texts = ["".join(page.extract_text().split()) for page in PdfReader(BytesIO(made.pdf)).pages]
    held = [each for each in sheets if name_of(each.address) in numbers]
    wrong = [
        each.title
        for each in held
        if "".join(each.title.split()) not in texts[numbers[name_of(each.address)] - 1]
    ]
    print(f"{len(held) - len(wrong)} of {len(held)} entries of its contents name their page")
    return wrong


def main() -> int:
    found = source(ROOT)
    if found.site is None:
        print("The demo manual has a finding that stops.")
        return 1
    sheets = chosen(found.site, Choice())
    with tempfile.TemporaryDirectory() as folder:
        wrong = the_file(found.site, sheets, Path(folder)) + the_book(found.site, sheets)
    for each in wrong:
        print(f"wrong: {each}")
    return int(bool(wrong))


if __name__ == "__main__":
    sys.exit(main())
