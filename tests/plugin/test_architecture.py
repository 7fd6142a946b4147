"""Who may know whom: MkDocs stays behind one package, and pages can be written in a browser."""

import ast
import subprocess
import sys
from pathlib import Path

SOURCE = Path(__file__).parents[2] / "src" / "underhoist"


def imported(file):
    """Top-level names of everything that the module imports."""
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name.partition(".")[0] for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield (node.module or "").partition(".")[0]


def test_only_the_plugin_imports_mkdocs():
    knowing = {
        file.relative_to(SOURCE).parts[0]
        for file in SOURCE.rglob("*.py")
        if {"mkdocs", "material", "properdocs"} & set(imported(file))
    }
    assert knowing == {"plugin"}


def test_pages_are_written_without_what_a_browser_lacks():
    code = (
        "import sys, underhoist.pages;"
        "print({'mkdocs', 'click', 'rich', 'watchdog'} & set(sys.modules))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "set()\n"
