"""The small manual as a project on the disk, for every folder of tests that builds it."""

import shutil
from pathlib import Path

MANUAL = Path(__file__).parents[1] / "pages" / "manual"
SETTINGS = """site_name: A small manual
docs_dir: pages
theme:
  name: material
plugins:
  - underhoist
"""


def make_project(folder: Path) -> Path:
    """Put the small manual and its settings into this folder, which is empty or not there."""
    shutil.copytree(MANUAL, folder / "pages")
    (folder / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    return folder
