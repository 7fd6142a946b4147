"""The rules about a fault's tables judge the table of every unit family: exact wording."""

import pytest

FILE = "faults/late-shifts.md"
CAUSES = """\
causes:
  worn-band: {name: Worn band, likelihood: 40 %}
  wrong-modulator: {name: Wrong modulator, likelihood: 30 %}
"""
COUNT = (
    "  count: {name: Count the turns, minutes: 10, access: on the hoist, rules_out: [worn-band]}\n"
)
PIN = (
    "  pin: {name: Pin measured, minutes: 5, access: on the hoist, rules_out: [wrong-modulator]}\n"
)
CHECKS = f"checks:\n{COUNT}{PIN}"


@pytest.fixture
def two(manual):
    """Two families, of which only the first has a procedure for its bands."""
    text = (manual.folder / "families/kestrel-3.md").read_text(encoding="utf-8")
    head = text.partition("fasteners:")[0].replace("Kestrel 3", "Wren 2")
    manual.page("families/wren-2.md", f"{head}---\nTwo of a kind.\n")
    manual.keys(FILE, f"unit_family: [kestrel-3, wren-2]\n{CAUSES}{CHECKS}")
    return manual


def told(manual):
    return [(code.split()[1], *rest) for code, *rest in manual.found()]


def test_both_have_everything(two):
    assert two.found() == []


def test_a_check_whose_procedure_is_for_the_other_finds_nothing_here(two):
    two.keys(FILE, CHECKS.replace("Count the turns,", "Count the turns, procedure: count-turns,"))
    assert two.found() == [
        (
            f"{FILE}:8:21 cause-never-found (stop)",
            "Worn band",
            "No check that is made on the wren-2 can find worn-band.",
            "Name the families that have it under unit_family of worn-band, or those on which it "
            "is made under unit_family of a check that finds it.",
        )
    ]


@pytest.mark.parametrize("where", ["cause", "check"])
def test_either_way_to_mend_it(two, where):
    checks = CHECKS.replace("Count the turns,", "Count the turns, procedure: count-turns,")
    causes = CAUSES
    if where == "check":
        checks = checks.replace("count-turns,", "count-turns, unit_family: any,")
    else:
        causes = causes.replace("likelihood: 40 %", "likelihood: 40 %, unit_family: kestrel-3")
    two.keys(FILE, causes + checks)
    assert two.found() == []


def test_a_check_of_a_family_that_has_none_of_its_causes(two):
    causes = CAUSES.replace("likelihood: 30 %", "likelihood: 30 %, unit_family: kestrel-3")
    two.keys(FILE, causes)
    assert told(two) == [
        (
            "check-tells-nothing",
            "Pin measured",
            "The wren-2 has none of the causes that this check tells.",
            "Name under unit_family of the check the families on which it is made.",
        )
    ]


def test_a_check_for_no_family_of_the_page(two):
    two.keys(FILE, "unit_family: wren-2\n")
    two.keys(FILE, f"{CHECKS}{COUNT.replace('count:', 'again: ')}".replace("again: ", "again:"))
    two.keys(FILE, CHECKS + COUNT.replace("count: {", "again: {procedure: count-turns, "))
    assert told(two) == [
        (
            "check-tells-nothing",
            "Count the turns",
            "It is made on no unit family of this page.",
            "The page is for wren-2: name a procedure for one of them, or name them under "
            "unit_family of the check.",
        )
    ]


def test_a_cause_of_no_family_of_the_page(two):
    two.keys(FILE, "unit_family: wren-2\n" + CAUSES.replace("40 %", "40 %, unit_family: kestrel-3"))
    two.keys(FILE, CHECKS.replace("worn-band]", "worn-band, wrong-modulator]"))
    assert told(two) == [
        (
            "cause-never-found",
            "Worn band",
            "No unit family of this page has worn-band.",
            "The page is for wren-2: name those that have it under unit_family.",
        )
    ]


def test_shares_of_one_family_make_too_much(two):
    causes = CAUSES.replace("40 %", "80 %").replace("30 %", "30 %, unit_family: kestrel-3")
    two.keys(FILE, causes + CHECKS.replace("Pin measured", "Pin measured, unit_family: kestrel-3"))
    assert told(two) == [
        (
            "shares-do-not-add-up",
            "30 %",
            "The likelihoods of the kestrel-3 on this page make 110 %.",
            "Take some away until they make 100 % or less.",
        )
    ]


def test_causes_of_two_families_may_make_more_than_a_hundred_together(two):
    causes = CAUSES.replace("40 %", "80 %, unit_family: wren-2")
    causes = causes.replace("30 %", "80 %, unit_family: kestrel-3")
    checks = CHECKS.replace("Pin measured", "Pin measured, unit_family: kestrel-3")
    checks = checks.replace("Count the turns", "Count the turns, unit_family: wren-2")
    two.keys(FILE, causes + checks)
    assert two.found() == []


def test_a_family_that_is_not_there(two):
    two.keys(FILE, CAUSES.replace("40 %", "40 %, unit_family: kestrel"))
    assert [each[:2] for each in told(two)] == [("dead-reference", "kestrel")]
