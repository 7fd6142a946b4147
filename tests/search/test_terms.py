"""Runs the tests of the search's pure modules under Node's own test runner."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

NODE = shutil.which("node", path=str(Path(sys.executable).parent)) or shutil.which("node")


@pytest.mark.parametrize(
    ("file", "least"), [("terms.test.js", 40), ("weigh.test.js", 12), ("again.test.js", 40)]
)
def test_the_pure_modules_of_the_search(file: str, least: int) -> None:
    path = Path(__file__).with_name(file)
    command = [str(NODE), "--test", "--test-reporter=tap", str(path)]
    run = subprocess.run(command, capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stdout[-6000:] + run.stderr
    passed = re.search(r"^# pass (\d+)$", run.stdout, re.MULTILINE)
    assert passed and int(passed[1]) >= least, "an empty run proves nothing"
