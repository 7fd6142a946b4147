"""Every faulty page of the rules' own examples and of the bad manuals, as one changed file each."""

from __future__ import annotations

import re
import sys
import tempfile
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path

from underhoist import rules
from underhoist.check import check
from underhoist.drafting.gather import gather
from underhoist.drafting.sources import Sources
from underhoist.drafting.told import Told, told

TESTS = Path(__file__).parents[1]
SMALLEST = TESTS / "good" / "smallest"
_BLOCK = re.compile(r'^```(\w+) title="([^"]+)"\n(.*?)^```$', re.MULTILINE | re.DOTALL)


def _changed_manual():
    """Return the class that lays an example over the smallest manual."""
    spec = spec_from_file_location("rules_conftest", TESTS / "rules" / "conftest.py")
    assert spec and spec.loader
    module = module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module.ChangedManual


def all_cases() -> list[tuple[str, str, str]]:
    """Return name, file and text of each."""
    found = [*_of_rules(), *_of_bad_manuals()]
    return [(name, file, text) for name, file, text in found if text != _text(SMALLEST / file)]


def _of_rules():
    manual_class = _changed_manual()
    for rule in rules.ALL:
        bad = rule.page.partition("\nGood:\n")[2].partition("\nBad")[2]
        for number, block in enumerate(_BLOCK.findall(bad), 1):
            with tempfile.TemporaryDirectory() as scratch:
                manual = manual_class(Path(scratch) / "manual")
                manual.example(*block)
                yield f"{rule.code} {number}", block[1], _text(manual.folder / block[1])


def _of_bad_manuals():
    for page in sorted((TESTS / "bad").rglob("*.md")):
        yield f"{page.parent.name} {page.stem}", f"any-unit/{page.name}", _text(page)


def _text(path: Path) -> str:
    """Return what stands in a text field after the file was pasted."""
    if not path.is_file():
        return ""
    text = path.read_bytes().decode("utf-8-sig", "replace")
    return text.replace("\r\n", "\n").replace("\r", "\n")


def sources(folder: Path = SMALLEST) -> Sources:
    """Return what the build sends along of a manual."""
    return gather(check(folder).manual, folder, name="Small", demo=False)


def checked_on_disk(manual_folder: Path, file: str, text: str) -> list[Told]:
    """Return what `underhoist check` says of the smallest manual with this one file changed."""
    path = manual_folder / file
    before = path.read_bytes() if path.is_file() else None
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8", newline="")
    try:
        return [told(each) for each in check(manual_folder).findings]
    finally:
        path.unlink() if before is None else path.write_bytes(before)
