"""Rules that are kept after each change find what the rules find in the whole manual."""

import random

import pytest
from small_project import MANUAL

from underhoist import rules
from underhoist.checker import Checker
from underhoist.rebuild import KeptRules
from underhoist.source import manual_of


def changed(dice, text):
    """Take lines out, write some twice, or put one in another place."""
    lines = text.splitlines(keepends=True)
    for _ in range(dice.randrange(1, 4)):
        line = lines.pop(dice.randrange(len(lines))) if len(lines) > 1 else ""
        for _ in range(dice.randrange(3)):
            lines.insert(dice.randrange(len(lines) + 1), line)
    return "".join(lines)


@pytest.mark.parametrize("seed", range(8))
def test_any_edits_one_after_the_other(seed):
    dice = random.Random(seed)  # noqa: S311
    files = sorted(path for path in MANUAL.rglob("*.*") if path.is_file())
    texts = {path.relative_to(MANUAL).as_posix(): path.read_bytes() for path in files}
    checker, kept, found = Checker(texts), KeptRules(), 0
    for _ in range(60):
        file = dice.choice(sorted(file for file in texts if file.endswith(".md")))
        match dice.randrange(6):
            case 0:
                checker.remove(file)
            case 1:
                checker.put(file, texts[file])
            case 2:
                checker.put(f"copies/{file}", texts[file])
            case _:
                checker.put(file, changed(dice, texts[file].decode()))
        manual = manual_of(checker.reads, checker.files)
        assert {*kept(manual)} == {*rules.run(manual)}
        found += bool(checker.checked().findings)
    assert found > 40
