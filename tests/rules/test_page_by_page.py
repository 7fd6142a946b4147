"""What the rules say of one page follows from that page and from what it looks up by its id."""

import random
import re
from collections.abc import Mapping
from pathlib import Path

import attrs
import pytest
from small_project import MANUAL

from underhoist import rules
from underhoist.check import check
from underhoist.checker import Checker
from underhoist.model import Body, Draft
from underhoist.source import manual_of

TESTS = Path(__file__).parents[1]
BAD = sorted({path.parent for path in TESTS.glob("bad/*/expected.txt")})
FOLDERS = [TESTS.parent / "procedures", MANUAL, *BAD]
GROUPS = ("families", "procedures", "faults", "tools", "hazards", "plain", "unread")
WALK = "walk"
"""In place of an id: all of a group was looked at."""


@pytest.fixture(scope="module", params=FOLDERS, ids=lambda folder: folder.name)
def manual(request):
    return check(request.param).manual


def without_text(thing):
    return attrs.evolve(thing, body=Body("", 1)) if attrs.has(type(thing)) else thing


def with_the_text_of(page, manual):
    """The manual with every text taken out but that of this page."""
    groups = {
        name: {
            id_: each if each is page else without_text(each)
            for id_, each in getattr(manual, name).items()
        }
        for name in GROUPS
    }
    return attrs.evolve(manual, **groups, repeated=(), drafts=())


def test_no_rule_of_one_page_looks_at_the_text_of_another(manual):
    for page in manual.texts():
        assert rules.of_page(manual, page) == rules.of_page(with_the_text_of(page, manual), page)


class Noted(Mapping):
    """A group, or the names of the files, that notes what is looked up in it."""

    def __init__(self, held, notes):
        self.held, self.notes = held, notes

    def __getitem__(self, key):
        self.notes.add(key)
        return self.held[key]

    def __contains__(self, key):
        self.notes.add(key)
        return key in self.held

    def __iter__(self):
        self.notes.add(WALK)
        return iter(self.held)

    def __len__(self):
        self.notes.add(WALK)
        return len(self.held)


def held(manual, name, key):
    """What is found when this is looked up."""
    group = getattr(manual, name)
    if isinstance(group, frozenset):
        return group if key == WALK else key in group
    if key == WALK:
        return [(id_, without_text(each)) for id_, each in group.items()]
    return without_text(group[key]) if key in group else None


class Kept:
    """What came of every page, and what was looked up for it."""

    def __init__(self, manual):
        self.manual = manual
        self.notes = {name: set() for name in (*GROUPS, "files")}
        watched = {name: Noted(getattr(manual, name), self.notes[name]) for name in self.notes}
        self.watched = attrs.evolve(manual, **watched)
        self.by_file = {page.file: (page, *self._made(page)) for page in manual.texts()}

    def _made(self, page):
        for each in self.notes.values():
            each.clear()
        made = rules.of_page(self.watched, page)
        return made, {(name, key) for name, keys in self.notes.items() for key in keys}

    def still(self, manual):
        """Pages of the changed manual of which nothing is another, with what came of them."""
        for page in manual.texts():
            before, made, looked_up = self.by_file.get(page.file, (None, None, ()))
            if page is before and all(
                held(manual, *each) == held(self.manual, *each) for each in looked_up
            ):
                yield page, made


def faulty():
    """The small manual's texts without their cautions and with a word that they break."""
    files = {path.relative_to(MANUAL).as_posix(): path for path in sorted(MANUAL.rglob("*.*"))}
    texts = {file: path.read_text("utf-8") for file, path in files.items() if path.suffix == ".md"}
    texts = {file: re.sub(r"^cautions:.*\n", "", text, flags=re.M) for file, text in texts.items()}
    texts["words.md"] = (
        "---\nkind: page\ntitle: Words\nsummary: Ours.\nwords:\n  housing: {also: [case]}\n"
        "  rag: {also: [cloth]}\n---\n"
    )
    return texts, files


def changed(dice, text):
    """Take a line out, write one twice or swap two."""
    lines = text.splitlines(keepends=True)
    at, other = dice.randrange(len(lines)), dice.randrange(len(lines))
    match dice.randrange(3):
        case 0:
            del lines[at]
        case 1:
            lines.insert(other, lines[at])
        case _:
            lines[at], lines[other] = lines[other], lines[at]
    return "".join(lines)


def test_what_came_of_a_page_stands_until_something_that_it_looked_up_is_another():
    texts, others = faulty()
    checker = Checker(texts, others)
    kept = Kept(manual_of(checker.reads, checker.files))
    stood = 0
    for seed in range(100):
        dice = random.Random(seed)  # noqa: S311
        file = dice.choice(sorted(texts))
        if seed % 4:
            checker.put(file, changed(dice, texts[file]))
        else:
            checker.remove(file)
        for _ in ("changed", "as before"):
            now = manual_of(checker.reads, checker.files)
            for page, made in kept.still(now):
                assert rules.of_page(now, page) == made, (seed, file, page.file)
                stood += 1
            kept = Kept(now)
            checker.put(file, texts[file])
    assert stood > 100 * len(texts)


def test_the_order_of_what_was_gathered_makes_no_difference(manual):
    gathered = {page.file: rules.of_page(manual, page).gathered for page in manual.texts()}
    backwards = dict(reversed(gathered.items()))
    assert rules.across(manual, gathered) == rules.across(manual, backwards)


@pytest.mark.parametrize("rule", rules.ALL, ids=lambda rule: rule.code)
def test_a_rule_has_one_form_or_comes_from_reading(rule):
    forms = ("pages", "check_page", "check", "gather", "check_gathered")
    assert {name for name in forms if getattr(rule, name)} in (
        set(),
        {"check"},
        {"pages", "check_page"},
        {"pages", "gather", "check_gathered"},
    )


def test_a_repeated_page_and_a_draft_are_looked_at_for_their_texts_alone(tmp_path):
    drain = "kind: procedure\ntitle: Drain\nsummary: Drain it.\nunit_family: any\narea: fluid\n"
    drain += "minutes: 5\nwho: senior\n"
    pages = {"a/drain.md": drain, "b/drain.md": drain, "fill.md": "kind: procedure\n"}
    for file, front in pages.items():
        (tmp_path / file).parent.mkdir(exist_ok=True)
        (tmp_path / file).write_text(f"---\n{front}---\n\n???\n\nWARNING: It is hot.\n")
    manual = check(tmp_path).manual
    found = {
        page.file: {each.code for each in rules.of_page(manual, page).findings}
        for page in manual.texts()
    }
    assert found == {
        "a/drain.md": {"not-written-yet", "caution-in-prose", "no-steps"},
        "b/drain.md": {"not-written-yet"},
        "fill.md": {"not-written-yet", "caution-in-prose", "no-steps"},
    }
    assert [type(page) is Draft for page in manual.texts()] == [False, False, True]
