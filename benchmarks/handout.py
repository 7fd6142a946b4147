"""What is handed over: every case in the file, its size with and without calculators, the book.

Called as: python tasks.py bench handout. Prints one line a measurement and enters it in the table;
exit code 1 where a case gives another answer or a page number of the book's contents is wrong.
"""

import json
import shutil
import sys
import tempfile
import time
from io import BytesIO
from pathlib import Path

import table
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
        else if ("example" in field.dataset) field.value = "";
        else if (!field.options) field.value = field.defaultValue;
        else for (const each of field.options) each.selected = each.defaultSelected;
    }
    fields[0].dispatchEvent(new Event("input", {bubbles: true}));
}"""
"""Types the entries in place of the example's, as somebody would who leaves the rest as it is."""


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


Found = tuple[list[table.Row], list[str]]
"""Rows of the table, and what is wrong."""


def all_of(what: str, right: int, count: int) -> table.Row:
    """A count that must be whole."""
    return table.Row(what=what, ours=right, unit="", budget=f"all {count}", held=right == count)


def the_file(site: Site, sheets: list[Sheet], folder: Path) -> Found:
    """Measure the file."""
    rows: list[table.Row] = []
    for calculators in (False, True):
        made = pack(site, sheets, MODULES, calculators=calculators)
        size = len(made.content) / 1e6
        said = "with calculators" if calculators else "for reading only"
        print(f"{made.pages} pages in one file, {said}: {size:.1f} MB")
        rows.append(table.Row(what=f"manual in one file, {said}", ours=round(size, 1), unit="MB"))
    file = folder / "manual.html"
    file.write_bytes(made.content)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=QUIET)
        page = browser.new_page(viewport={"width": 390, "height": 844})
        text, answer = first_answer(page, file.as_uri())
        print(f"opened from the disk: text after {text:.1f} s, first answer after {answer:.1f} s")
        count, wrong = ask_all(page, file.as_uri())
        browser.close()
    print(f"{count - len(wrong)} of {count} cases are answered as at the desk")
    rows += [
        table.Row(what="the file opened: its text", ours=round(text, 2), unit="s"),
        table.Row(what="the file opened: first answer", ours=round(answer, 1), unit="s"),
        all_of("cases answered in the file as at the desk", count - len(wrong), count),
    ]
    return rows, wrong


def the_book(site: Site, sheets: list[Sheet]) -> Found:
    """Print the whole manual; wrong are the entries of its contents that name another page."""
    start = time.perf_counter()
    made = book(site, sheets, MODULES)
    took = time.perf_counter() - start
    print(f"a book of {made.leaves} pages of paper in {took:.0f} s")
    numbers = read(made.pdf)
    texts = ["".join(page.extract_text().split()) for page in PdfReader(BytesIO(made.pdf)).pages]
    held = [each for each in sheets if name_of(each.address) in numbers]
    wrong = [
        each.title
        for each in held
        if "".join(each.title.split()) not in texts[numbers[name_of(each.address)] - 1]
    ]
    print(f"{len(held) - len(wrong)} of {len(held)} entries of its contents name their page")
    return [
        table.Row(what=f"book of {made.leaves} pages of paper", ours=round(took), unit="s"),
        all_of("contents of the book that name their page", len(held) - len(wrong), len(held)),
    ], wrong


def main() -> int:
    found = source(ROOT)
    if found.site is None:
        print("The demo manual has a finding that stops.")
        return 1
    sheets = chosen(found.site, Choice())
    with tempfile.TemporaryDirectory() as folder:
        rows, wrong = the_file(found.site, sheets, Path(folder))
    more, also_wrong = the_book(found.site, sheets)
    for each in (*wrong, *also_wrong):
        print(f"wrong: {each}")
    return int(not table.enter("handout", [*rows, *more]))


if __name__ == "__main__":
    sys.exit(main())
