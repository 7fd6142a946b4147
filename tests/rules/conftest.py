"""A small manual without faults, changed as a test or a rule's own example says."""

import base64
import re
import shutil
from pathlib import Path

import pytest

from underhoist.check import check

SMALLEST = Path(__file__).parents[1] / "good" / "smallest"


class ChangedManual:
    """The smallest manual in a folder of its own."""

    def __init__(self, folder: Path) -> None:
        shutil.copytree(SMALLEST, folder)
        self.folder = folder

    def page(self, file: str, text: str) -> None:
        """Write a whole page."""
        path = self.folder / file
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")

    def keys(self, file: str, text: str) -> None:
        """Put these keys in place of those of the same name, new ones below."""
        front, body = self._parts(file)
        for block in re.findall(r"^\S.*\n?(?:^[ \t].*\n?)*", text, re.MULTILINE):
            name = block.partition(":")[0]
            front = re.sub(rf"^{name}:.*\n(?:^[ \t].*\n)*", "", front, flags=re.MULTILINE)
            front += block if block.endswith("\n") else f"{block}\n"
        self.page(file, f"---\n{front}---\n{body}")

    def body(self, file: str, text: str) -> None:
        """Put this text in place of the body."""
        self.page(file, f"---\n{self._parts(file)[0]}---\n{text}")

    def example(self, language: str, file: str, text: str) -> None:
        """Lay a block of a rule's page over the manual."""
        if language == "yaml":
            self.keys(file, text)
        elif language == "base64":
            (self.folder / file).write_bytes(base64.b64decode(text))
        elif text.startswith("---"):
            self.page(file, text)
        else:
            self.body(file, text)

    def codes(self) -> list[str]:
        return [finding.code for finding in check(self.folder).findings]

    def found(self) -> list[tuple[str, str, str, str]]:
        """Every finding whole: place, code and severity; what was written; why; how to mend it."""
        return [
            (f"{each.at} {each.code} ({each.severity})", each.written, each.wrong, each.mend)
            for each in check(self.folder).findings
        ]

    def _parts(self, file: str) -> tuple[str, str]:
        _, front, body = (self.folder / file).read_text(encoding="utf-8").split("---\n", 2)
        return front, body


@pytest.fixture
def manual(tmp_path):
    return ChangedManual(tmp_path / "manual")
