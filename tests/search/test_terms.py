"""Runs the tests of the search's pure module under Node's own test runner."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

NODE = shutil.which("node", path=str(Path(sys.executable).parent)) or shutil.which("node")


def test_the_terms_of_a_text():
    file = Path(__file__).with_name("terms.test.js")
    command = [str(NODE), "--test", "--test-reporter=tap", str(file)]
    run = subprocess.run(command, capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stdout[-6000:] + run.stderr
    passed = re.search(r"^# pass (\d+)$", run.stdout, re.MULTILINE)
    assert passed and int(passed[1]) >= 40, "an empty run proves nothing"
