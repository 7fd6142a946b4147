"""The author's guide, followed to the letter: from an empty folder to the published procedure.

Commands are the `sh` blocks; `sh-stops` are those that must find something, and the `text` block
below is what they print. A file's text is the block below the path that it is saved as. What is
typed into `underhoist draft` is the table of questions and answers.
"""

import os
import re
import shlex
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from underhoist.browser.wheels import compiled

ROOT = Path(__file__).parents[2]
GUIDE = ROOT / "procedures/writing"
PAGES = ("begin", "draft", "steps", "findings", "publish", "editors")
TOLD = ("index", "faults", "phones", "shop-sync")
"""Pages that explain, without a command to follow."""
BLOCK = re.compile(r"^```([\w-]+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
PATH = re.compile(r"`(procedures/[\w./-]+)`")
SLIP = re.compile(r"write `([^`]+)` instead of `([^`]+)`")
ANSWER = re.compile(r"^\| ([^|]+?) \| ([^|]+?) \|$", re.MULTILINE)
PICTURE = re.compile(r"^!\[.*\]\(\.\./drawings/.*\)$", re.MULTILINE)


class Follower:
    """Somebody who does what the guide says, in a folder of their own."""

    def __init__(self, folder, installed):
        self.folder = folder
        self.ran = []
        self.said = ""
        self.heard = {}
        self.environment = {**os.environ, "PYTHONPATH": str(installed), "PYTHONUTF8": "1"}

    def run(self, line, *, typed="", stops=False):
        words = shlex.split(line)
        if words[0] == "cd":
            self.folder = self.folder / words[1]
            return
        assert words[0] == "underhoist"
        done = subprocess.run(
            [sys.executable, "-m", *words], cwd=self.folder, env=self.environment,
            capture_output=True, text=True, encoding="utf-8", input=typed, check=False,
        )  # fmt: skip
        assert done.returncode == int(stops), f"{line}\n{done.stdout}{done.stderr}"
        self.said = done.stdout
        self.ran.append(words[1])

    def path(self, before):
        """The file that the text before a block names last."""
        return self.folder / PATH.findall(before)[-1]

    def follow(self, text):
        """Do what one page of the guide says, block by block."""
        at = 0
        for block in BLOCK.finditer(text):
            before, (language, inner) = text[at : block.start()], block.groups()
            at = block.end()
            getattr(self, f"_{language.replace('-', '_')}")(before, inner, text[at:])

    def _sh(self, before, inner, after):
        for line in inner.splitlines():
            self.run(line, typed=self._typed(line, after))
            self.heard[line] = self.said
        if said := re.match(r"\s*It answers `([^`]+)`", after):
            assert said[1] in self.said

    def _typed(self, line, after):
        if line != "underhoist draft":
            return ""
        self.asked = ANSWER.findall(after)[1:]
        return "".join("\n" if answer == "Enter" else f"{answer}\n" for _, answer in self.asked)

    def _sh_stops(self, before, inner, after):
        wrong, right = SLIP.search(before).groups()
        self.replace(self.path(before), right, wrong)
        self.run(inner.strip(), stops=True)
        assert BLOCK.search(after)[2].strip() in self.said

    def _markdown(self, before, inner, after):
        path = self.path(before)
        assert path.is_file(), "the draft wrote another file than the guide says"
        path.write_text(inner, encoding="utf-8")
        self.page = path

    def _svg(self, before, inner, after):
        path = self.path(before)
        path.parent.mkdir(exist_ok=True)
        path.write_text(inner, encoding="utf-8")
        self.replace(self.page, "## Steps", f"## Before you start\n\n{self.picture}\n\n## Steps")

    def _text(self, before, inner, after):
        """A text to read, not to type; the line of a picture is put in with its drawing."""
        if PICTURE.match(inner):
            self.picture = inner.strip()

    def _change(self, before, inner, after):
        file, old, new = inner.splitlines()
        self.replace(self.folder / file, old, new)

    def replace(self, path, old, new):
        text = path.read_text(encoding="utf-8")
        assert text.count(old) == 1, f"{path}: {old}"
        path.write_text(text.replace(old, new), encoding="utf-8")


@pytest.fixture(scope="module")
def installed(tmp_path_factory):
    """The builder as its wheels hold it, away from the working tree."""
    wheels, folder = tmp_path_factory.mktemp("wheels"), tmp_path_factory.mktemp("installed")
    for project in (ROOT, ROOT / "calculators"):
        subprocess.run(
            [sys.executable, "-m", "build", "--wheel", "--no-isolation", "-o", wheels, project],
            check=True, capture_output=True,
        )  # fmt: skip
    for wheel in wheels.glob("*.whl"):
        with zipfile.ZipFile(wheel) as held:
            held.extractall(folder)
    return folder


@pytest.fixture(scope="module")
def followed(tmp_path_factory, installed):
    start = tmp_path_factory.mktemp("guide")
    for name in ("node_modules", ".cache"):  # what a first build would fetch from the network
        if (ROOT / name).exists():
            (start / name).symlink_to(ROOT / name)
    follower = Follower(start, installed)
    for name in PAGES:
        follower.follow((GUIDE / f"{name}.md").read_text(encoding="utf-8"))
    return follower


def test_the_builder_that_is_followed_is_the_installed_one(installed):
    done = subprocess.run(
        [sys.executable, "-c", "import underhoist; print(underhoist.__file__)"],
        env={**os.environ, "PYTHONPATH": str(installed)},
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert Path(done.stdout.strip()).is_relative_to(installed)


def test_the_installed_one_sends_a_phone_what_the_working_tree_sends(followed):
    """So nobody's phone fetches Python's memory anew because the builder was installed."""
    runtime = followed.folder / "site/runtime"
    sent = {file.name: file.read_bytes() for file in runtime.glob("wheel-*/*.whl")}
    wheels = compiled(ROOT / ".cache/wheels")
    assert {file.name: file.read_bytes() for file in wheels}.items() <= sent.items()


def test_the_guide_uses_every_command_that_an_author_needs(followed):
    assert set(followed.ran) >= {"init", "check", "draft", "build", "schema"}
    assert followed.ran.count("build") == 2


def test_the_slip_of_the_guide_is_mended(followed):
    assert "minutes: 15\n" in followed.page.read_text(encoding="utf-8")


def test_the_new_procedure_is_published(followed):
    page = followed.folder / "site/example-3/check-the-pan-for-weeps/index.html"
    text = page.read_text(encoding="utf-8")
    assert "Check the pan for weeps" in text
    assert "drawings/pan-edge.svg" in text
    assert "Second check" in text


def test_the_manual_has_no_finding_at_the_end(followed):
    followed.run("underhoist check")
    assert followed.said == "8 pages checked: nothing found.\n"


def test_the_changed_torque_is_told(followed):
    text = (followed.folder / "site/changes/index.html").read_text(encoding="utf-8")
    assert re.search(r"110.{0,40}100", text, re.DOTALL)


def test_the_questions_are_those_of_the_guide_in_its_order(followed):
    at = 0
    for question, _ in followed.asked:
        found = followed.heard["underhoist draft"].find(question, at)
        assert found >= at, question
        at = found
    assert at > 0


def test_the_name_stands_on_the_front_page(followed):
    front = (followed.folder / "site/index.html").read_text(encoding="utf-8")
    assert "Quay Street manual" in front


def test_every_page_of_the_guide_is_followed_or_only_leads_on():
    assert {path.stem for path in GUIDE.glob("*.md")} == {*PAGES, *TOLD}
    assert [name for name in TOLD if "```sh" in (GUIDE / f"{name}.md").read_text()] == []


def test_every_file_that_begin_names_is_in_a_new_manual(followed):
    named = re.findall(r"^\| `([^`]+)`", (GUIDE / "begin.md").read_text(), re.MULTILINE)
    assert len(named) >= 5
    assert [name for name in named if not (followed.folder / "procedures" / name).exists()] == []
