"""Which of the offered edits hold: each is tried, and taken back where it does harm."""

from collections import Counter
from collections.abc import Iterable, Mapping

from attrs import frozen

from underhoist.checker import Checked, Checker
from underhoist.finding import Edit, Finding
from underhoist.mends.edits import apply, disjoint

ROUNDS = 20
"""An edit may bring a finding to light that offers the next; more rounds than this are a circle."""

Key = tuple[str, str, str, str]
"""What a finding is known by before and after lines have moved: file, code, written, wrong."""


@frozen
class Plan:
    """The new texts by file, and the findings that their edits mend, in order."""

    texts: Mapping[str, str]
    mended: tuple[Finding, ...]


def plan(texts: Mapping[str, str], others: Iterable[str]) -> Plan:
    """Try every offered edit: it stays where its finding goes and no other finding comes.

    `texts` are the pages as their files hold them. A page that could not be read before may then
    show what else is wrong with it, on other lines; that is no harm done.
    """
    trial = _Trial(texts, others)
    mended: list[Finding] = []
    for _ in range(ROUNDS):
        offers = trial.offers()
        if not offers:
            break
        if trial.take(offers):
            mended += offers
            continue
        for each in offers:
            mended += [each] if trial.take([each]) else []
    changed = {file: text for file, text in trial.texts.items() if text != texts[file]}
    return Plan(changed, tuple(sorted(mended, key=lambda each: (each.at.file, each.at.line))))


class _Trial:
    """The texts with the edits so far, and what the check finds in them."""

    def __init__(self, texts: Mapping[str, str], others: Iterable[str]) -> None:
        self.texts = dict(texts)
        self._checker = Checker(self.texts, others)
        self._checked = self._checker.checked()
        self._refused: set[Key] = set()

    def offers(self) -> list[Finding]:
        """Return findings whose edits were not refused and do not meet one another."""
        found = [each for each in self._checked.findings if _key(each) not in self._refused]
        kept: dict[Edit, Finding] = {}
        for file in _files(found):
            edits = {each.edit: each for each in found if each.edit and each.edit.file == file}
            kept |= {edit: edits[edit] for edit in disjoint(edits)}
        return list(kept.values())

    def take(self, group: list[Finding]) -> bool:
        """Make these edits; where they do harm take them back, and refuse one that is alone."""
        if not all(each in self._checked.findings for each in group):  # an edit before moved it
            return False
        edited = {file: self._edited(file, group) for file in _files(group)}
        after = self._check(edited)
        if self._is_good(group, after):
            self.texts |= edited
            self._checked = after
            return True
        self._check({file: self.texts[file] for file in edited})
        if len(group) == 1:
            self._refused.add(_key(group[0]))
        return False

    def _check(self, texts: Mapping[str, str]) -> Checked:
        for file, text in texts.items():
            self._checker.put(file, text)
        return self._checker.checked()

    def _edited(self, file: str, group: list[Finding]) -> str:
        edits = [each.edit for each in group if each.edit and each.edit.file == file]
        return apply(self.texts[file], edits)

    def _is_good(self, group: list[Finding], after: Checked) -> bool:
        was, now = Counter(map(_key, self._checked.findings)), Counter(map(_key, after.findings))
        gone = Counter(map(_key, group))
        if any(now[key] > was[key] - count for key, count in gone.items()):
            return False
        unread = set(self._checked.manual.unread.values()) & _files(group)
        if unread:
            edits = [each.edit for each in group if each.edit]
            touched = {(edit.file, edit.line) for edit in edits if edit.line == edit.end_line}
            new = [each for each in after.findings if now[_key(each)] > was[_key(each)]]
            return not any((each.at.file, each.at.line) in touched for each in new)
        return not now - was


def _files(group: Iterable[Finding]) -> set[str]:
    return {each.edit.file for each in group if each.edit}


def _key(finding: Finding) -> Key:
    return finding.at.file, finding.code, finding.written, finding.wrong
