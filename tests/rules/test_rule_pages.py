"""Each rule's page: its examples produce exactly its own code, and the list of codes is closed."""

import re
from pathlib import Path

import pytest

from underhoist import rules

BLOCK = re.compile(r'^```(\w+) title="([^"]+)"\n(.*?)^```$', re.MULTILINE | re.DOTALL)
SOURCE = Path(rules.__file__).parents[1]


def parts(page):
    """Blocks under Good, and those under each Bad."""
    good, *bad = re.split(r"^Bad.*:$", page.partition("\nGood:\n")[2], flags=re.MULTILINE)
    return BLOCK.findall(good), [BLOCK.findall(each) for each in bad]


BAD = [(rule, number) for rule in rules.ALL for number, _ in enumerate(parts(rule.page)[1], 1)]


def test_there_are_at_least_thirty_rules():
    assert len(rules.ALL) >= 30
    assert len({rule.code for rule in rules.ALL}) == len(rules.ALL)


def test_every_file_of_rules_is_a_rule_named_for_its_code():
    files = {path.stem for path in (SOURCE / "rules").glob("[a-z]*.py")}
    assert files == {rule.code.replace("-", "_") for rule in rules.ALL}


def test_every_code_of_the_source_has_a_rule():
    text = "".join(path.read_text() for path in (SOURCE / "source").glob("*.py"))
    raised = set(re.findall(r'"([a-z]+(?:-[a-z]+)+)"', text))
    codes = {rule.code for rule in rules.ALL}
    wanted = {"unreadable-page", "front-matter", "yaml-alias", "unknown-key", "missing-key"}
    assert wanted <= raised & codes
    assert raised - codes == {"not-a-number", "unit-family"}


@pytest.mark.parametrize("rule", rules.ALL, ids=lambda rule: rule.code)
def test_page_has_a_title_and_says_why(rule):
    title, blank, text = rule.page.split("\n", 2)
    assert title.endswith(".") and not blank
    assert len(text.partition("Good:")[0].split()) >= 10
    assert rule.title == title[:-1]


@pytest.mark.parametrize("rule", rules.ALL, ids=lambda rule: rule.code)
def test_good_example_is_silent(rule, manual):
    good, _ = parts(rule.page)
    assert good
    for block in good:
        manual.example(*block)
    assert manual.found() == []


def test_every_rule_has_a_bad_example():
    assert {rule.code for rule, _ in BAD} == {rule.code for rule in rules.ALL}


@pytest.mark.parametrize(("rule", "number"), BAD, ids=lambda each: getattr(each, "code", None))
def test_bad_example_produces_its_own_code_only(rule, number, manual):
    blocks = parts(rule.page)[1][number - 1]
    assert blocks
    for block in blocks:
        manual.example(*block)
    assert set(manual.codes()) == {rule.code}
