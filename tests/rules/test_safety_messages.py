"""What the standards say of safety messages, against the rules: published/signal_words.json."""

import json
from pathlib import Path

import pytest

from underhoist.signal_words import Consequence, word_for

FILE = Path(__file__).parents[1] / "published" / "signal_words.json"
CASES = {case["id"]: case for case in json.loads(FILE.read_text(encoding="utf-8"))}


def test_every_case_names_its_source():
    assert len(CASES) == 11
    assert all(case["source"] and case["how"] for case in CASES.values())


@pytest.mark.parametrize("id_", ["SW-01", "SW-03"])
def test_word_for_a_consequence(id_):
    given = CASES[id_]["inputs"]
    consequence = Consequence(given["severity"]["value"])
    certain = given["likelihood"]["value"].startswith("will")
    word = word_for(consequence, certain=certain)
    assert word.upper() == CASES[id_]["expected"]["value"]


def test_how_to_avoid_is_required(manual):
    """SW-11: a warning with what happens and nothing to do about it."""
    given = {name: each["value"] for name, each in CASES["SW-11"]["inputs"].items()}
    assert given["howtoavoid"] == ""
    manual.keys(
        "hazards/hot-fluid.md", f'harm: {given["consequence"]}\navoid: "{given["howtoavoid"]}"\n'
    )
    ((_, _, wrong, _),) = manual.found()
    assert "avoid" in wrong
    assert CASES["SW-11"]["expected"]["value"] == "error: how to avoid is required"


def test_a_hazard_without_the_key_at_all(manual):
    hazard = manual.folder / "hazards/hot-fluid.md"
    lines = hazard.read_text(encoding="utf-8").splitlines(keepends=True)
    hazard.write_text("".join(line for line in lines if not line.startswith("avoid:")), "utf-8")
    ((place, _, wrong, _),) = manual.found()
    assert place == "hazards/hot-fluid.md:2:1 missing-key (stop)"
    assert wrong == "This kind of page needs the key avoid."


def test_before_its_step_and_never_after_it(manual):
    """SW-17, for the fifth step."""
    assert CASES["SW-17"]["inputs"]["message"]["value"] == "applies to step 5"
    steps = "".join(f"{number}. Wipe it.\n\n" for number in range(1, 5))
    before = "5. <hazard:hot-fluid>\n\n    Loosen it.\n"
    after = "5. Loosen it.\n\n    <hazard:hot-fluid>\n"
    manual.body("kestrel-3/clean-adjuster.md", f"## Steps\n\n{steps}{before}")
    assert manual.found() == []
    manual.body("kestrel-3/clean-adjuster.md", f"## Steps\n\n{steps}{after}")
    ((place, _, wrong, mend),) = manual.found()
    assert place.endswith("caution-after-step (stop)")
    assert wrong == "The caution stands below the action of step 5."
    assert mend == "Put it first in the step."


def test_no_whole_procedure_in_a_caution(manual):
    """SW-18."""
    manual.keys("hazards/hot-fluid.md", 'avoid: "1. Switch off. 2. Wait. 3. Touch the pan."\n')
    ((place, _, _, mend),) = manual.found()
    assert place.endswith("caution-with-steps (look)")
    assert mend.lower().startswith(CASES["SW-18"]["expected"]["value"])
