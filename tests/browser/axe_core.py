"""axe-core on an open page: WCAG 2.2 AA, best practice, and contrast of 7:1, on either paper."""

from pathlib import Path

from playwright.sync_api import Page

AXE = Path(__file__).parents[2] / "node_modules" / "axe-core" / "axe.min.js"
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
RUN = """(tags) => axe.run({
  runOnly: { type: "tag", values: tags },
  rules: { "color-contrast": { enabled: false }, "color-contrast-enhanced": { enabled: true } },
  resultTypes: ["violations"], selectors: false, preload: false,
})"""
"""What asks for 7:1 finds whatever has not 4.5:1. Of what passes, only the rules are listed: each
of its elements was half of the work. Nothing is fetched ahead: only rules about films, sound and
the turned screen want it, and no page has films or sound."""
COLOURS = ["color-contrast-enhanced", "link-in-text-block"]
"""The rules that can tell one paper from the other: nothing else changes with it."""
ON_DARK_PAPER = """async (rules) => {
  const root = document.documentElement;
  root.dataset.paper = "dark";
  const result = await axe.run({
    runOnly: { type: "rule", values: rules },
    resultTypes: ["violations"], selectors: false, preload: false,
  });
  root.dataset.paper = "light";
  return result;
}"""
FILLED_BY_SCRIPT = "#cards, #stored, #results"
"""What stands empty on a page until its script has filled it."""


def settle(page: Page) -> None:
    """Wait until everything stands on the page that axe is to look at."""
    for empty in page.locator(FILLED_BY_SCRIPT).all():
        empty.locator("> *").first.wait_for()


def findings(page: Page) -> list[str]:
    """Each fault on either paper as rule, element and what is wrong with it."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE.read_text(encoding="utf-8"))
    whole = page.evaluate(RUN, TAGS)
    assert len(whole["passes"]) > 15, "axe looked at next to nothing"
    dark = page.evaluate(ON_DARK_PAPER, COLOURS)
    assert dark["passes"] or dark["violations"], "axe saw no colour"
    return [
        f"{fault['id']}: {node['html'][:160]}: {node['failureSummary']}"
        for fault in whole["violations"] + dark["violations"]
        for node in fault["nodes"]
    ]
