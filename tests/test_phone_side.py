"""Runs the phone side's pure modules under Node's own test runner, a folder in one process."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).parent
NODE = shutil.which("node", path=str(Path(sys.executable).parent)) or shutil.which("node")


@pytest.mark.parametrize(("folder", "least"), [("cards", 30), ("drafting", 12), ("fault", 7)])
def test_the_pure_modules(folder, least):
    files = sorted(map(str, (HERE / folder).glob("*.test.js")))
    run = subprocess.run(
        [str(NODE), "--test", "--test-isolation=none", "--test-reporter=tap", *files],
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode == 0, run.stdout[-6000:] + run.stderr
    passed = re.search(r"^# pass (\d+)$", run.stdout, re.MULTILINE)
    assert passed and int(passed[1]) >= least, "an empty run proves nothing"
