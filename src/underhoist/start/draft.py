"""A page drafted from answers: asked for, written once and whole, then checked."""

import os
from collections.abc import Callable
from pathlib import Path, PurePosixPath
from tempfile import NamedTemporaryFile

from attrs import frozen

from underhoist.check import FolderChecker
from underhoist.checker import Checked
from underhoist.finding import Finding
from underhoist.model import Manual
from underhoist.model.values import Id
from underhoist.rules.not_written_yet import CODE as NOT_WRITTEN_YET
from underhoist.source import is_page
from underhoist.start.ask import Asker
from underhoist.start.draft_family import draft_family
from underhoist.start.draft_others import draft_fault, draft_hazard, draft_plain, draft_tool
from underhoist.start.draft_procedure import draft_procedure
from underhoist.start.interview import Drafted, Interview
from underhoist.start.question import Offer, Question, free, id_of

DRAFTS: dict[str, tuple[str, Callable[[Interview], Drafted]]] = {
    "procedure": ("a job, step by step", draft_procedure),
    "tool": ("something to fetch", draft_tool),
    "hazard": ("a danger and how to avoid it", draft_hazard),
    "fault": ("a complaint, its causes and the checks", draft_fault),
    "unit-family": ("a family of transmissions and its figures", draft_family),
    "page": ("any other text", draft_plain),
}
"""What each kind of page is, and what drafts it."""


@frozen
class Written:
    """A page that was written: its file, and what the check says about the manual with it."""

    file: str
    checked: Checked
    before: frozenset[Finding]
    """What the check said before the page was there."""

    @property
    def open(self) -> tuple[Finding, ...]:
        """What only the author knows: one finding for each place."""
        here = (each for each in self.checked.findings if each.at.file == self.file)
        return tuple(each for each in here if each.code == NOT_WRITTEN_YET)

    @property
    def others(self) -> tuple[Finding, ...]:
        """What else the check says that it did not say before, about this page or another."""
        return tuple(
            each
            for each in self.checked.findings
            if each not in self.before and each not in self.open
        )


def write_draft(folder: Path, asker: Asker) -> Written:
    """Ask for a page of the manual in this folder of pages and write it.

    Nothing is on the disk before the last answer. Raises Unusable where there is no manual,
    UnclearError for a prepared answer that cannot be taken, OSError where the file cannot be
    written.
    """
    checker = FolderChecker(folder)
    before = checker.checked()
    manual = before.manual
    kind = _kind(asker)
    drafted = DRAFTS[kind][1](Interview(manual, asker))
    file = _file(asker, manual, drafted)
    asker.finish()
    _write_whole(folder / file, drafted.text)
    checker.refresh()
    return Written(file, checker.checked(), frozenset(before.findings))


def _kind(asker: Asker) -> str:
    offers = tuple(Offer(kind, what) for kind, (what, _) in DRAFTS.items())
    answer = asker.ask(Question(key="kind", words="What kind of page?", offers=offers))
    return answer[0] if answer else next(iter(DRAFTS))


def _file(asker: Asker, manual: Manual, drafted: Drafted) -> str:
    """Ask for the page's id, with one made of its title proposed; it becomes the file name."""
    taken = frozenset(PurePosixPath(file).stem for file in manual.files if is_page(file))
    proposed = free(id_of(drafted.title) or "new-page", taken)
    words = "Under which name is it filed? Other pages refer to it by this name."
    question = Question(key="id", words=words, new=Id, proposed=(proposed,), taken=taken)
    name = (*asker.ask(question), proposed)[0]
    return f"{drafted.folder}/{name}.md" if drafted.folder else f"{name}.md"


def _write_whole(path: Path, text: str) -> None:
    """Put the file there whole or not at all, and never in place of another."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with NamedTemporaryFile(dir=path.parent, prefix=".", suffix=".tmp", delete=False) as file:
        file.write(text.encode())
        made = Path(file.name)
    try:
        if path.exists():
            raise FileExistsError(17, os.strerror(17), str(path))
        made.chmod(0o644)
        made.rename(path)
    finally:
        made.unlink(missing_ok=True)
