"""Every built page against the HTML standard: nesting, ids, attributes, ARIA."""

import json
import subprocess
from pathlib import Path

from underhoist.browser import tools

ROOT = Path(__file__).parents[2]
RULES = {"root": True, "extends": ["html-validate:standard"]}


def test_every_page_is_valid_html(built, tmp_path):
    pages = [str(path) for path in sorted(built.site.rglob("*.html"))]
    assert len(pages) > 40
    rules = tmp_path / "rules.json"
    rules.write_text(json.dumps(RULES), encoding="utf-8")
    program = ROOT / "node_modules/html-validate/bin/html-validate.mjs"
    command = [tools.node(), str(program), "--config", str(rules), "--formatter", "text", *pages]
    done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=120)
    assert done.stdout + done.stderr == ""
    assert done.returncode == 0
