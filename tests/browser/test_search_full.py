"""The phone's compact search answers as MiniSearch does, and looks at no more than allowed."""

import json
import random
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from underhoist.check import check

ROOT = Path(__file__).parents[2]
NODE = shutil.which("node", path=str(Path(sys.executable).parent)) or shutil.which("node")
ASKED = (
    "bushing", "bushngs", "tail housing", "kick down", "kick-dow", "shifts late", "band", "s", "se",
    "seal", "120 in-lb", "120 lbf·in", "modualtor setting", "leaves a puddle", "zeppelin", "1-2",
    "torque wrench pan bolts", "the fluid is low and it shifts late on the hill", "205/70",
    "set the front band", "the the the", "zeppelin band", "kestrel-3", "M8 x 1.25", "",
)  # fmt: skip
ALIKE = 120
"""Questions drawn from the manual's own terms, of each kind."""


def drawn(site: Path) -> list[str]:
    """Questions of one to ten terms, of their beginnings, and of terms that lack a letter."""
    terms = json.loads((site / "search/index.json").read_text("utf-8"))["index"]["terms"].split()
    chance = random.Random(4)  # noqa: S311 - drawn alike at every run
    several = [" ".join(chance.sample(terms, chance.randint(1, 10))) for _ in range(ALIKE)]
    begun = [chance.choice(terms)[: chance.randint(1, 4)] for _ in range(ALIKE)]
    slips = [chance.choice(terms) for _ in range(ALIKE)]
    return [*several, *begun, *(term[:at] + term[at + 1 :] for term in slips for at in [2])]


@pytest.fixture(scope="module")
def found(site: Path) -> dict:
    words = check(ROOT / "procedures").manual.words.values()
    names = [other.value for word in words for other in (*word.also, *word.heard)]
    questions = [*ASKED, *names, *drawn(site)]
    run = subprocess.run(
        [str(NODE), str(Path(__file__).with_name("full_search.mjs")), str(site)],
        input=json.dumps(questions), capture_output=True, text=True, check=True,
    )  # fmt: skip
    return {**json.loads(run.stdout), "questions": len(questions)}


def test_every_answer_is_the_one_of_a_full_search(found: dict) -> None:
    assert found["wrong"] == []
    assert found["found"] >= 0.8 * found["questions"], "questions that find nothing prove nothing"


def test_no_question_looks_at_more_of_the_index_than_allowed(found: dict) -> None:
    assert found["over"] == []


def test_a_question_that_is_cut_says_so_and_no_other_does(found: dict) -> None:
    assert found["unsaid"] == []
    assert found["cut"] > 10, "a bound that cuts nothing proves nothing"
