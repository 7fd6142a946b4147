"""What an editor may offer and explain at a place, from the model and the manual."""

from collections.abc import Iterator

from attrs import frozen

from underhoist.editor.cursor import (
    InKeys,
    InReference,
    kind_of,
    reference_at,
    spot,
    word_at,
)
from underhoist.model import Fastener, Fault, Hazard, Manual, Page
from underhoist.model.values import ReadingName
from underhoist.references import SCHEMES, candidates, matches
from underhoist.schema import ByName, Form, Key, Keys, Many, One, Value, at, form_of, keys_of
from underhoist.schema.known import EVERY_FAMILY
from underhoist.source import KINDS


@frozen
class Suggestion:
    """One entry of a list: what it is called, what is put in, and what it means."""

    label: str
    insert: str
    detail: str = ""
    explained: str = ""


def suggestions(manual: Manual, page: Page, text: str, line: int, column: int) -> list[Suggestion]:
    """Return what may stand where the cursor is; line and column count from 0."""
    lines = text.split("\n")
    here = spot(lines, line, column)
    match here:
        case InReference():
            return list(_ids(manual, page, here.scheme))
        case InKeys():
            return list(_in_front(manual, page, kind_of(lines), here))
        case None:
            return []


def explanation(manual: Manual, page: Page, text: str, line: int, column: int) -> str:
    """Explain the key, the id or the reference under the cursor; nothing where there is none."""
    lines = text.split("\n")
    if line >= len(lines):
        return ""
    if reference := reference_at(lines[line], column):
        return _told(manual, page, *reference)
    word = word_at(lines[line], column)
    here = spot(lines, line, word[0]) if word else None
    if word is None or not isinstance(here, InKeys):
        return ""
    keys = _level(kind_of(lines), here.path)
    if here.key is None:
        key = keys.named(word[1]) if isinstance(keys, Keys) else None
        return _about(key) if key else ""
    key = keys.named(here.key) if isinstance(keys, Keys) else None
    return _told(manual, page, key.to, word[1]) if key and key.to in SCHEMES else ""


def _in_front(manual: Manual, page: Page, kind: str, here: InKeys) -> Iterator[Suggestion]:
    if not here.path and here.key == "kind":
        yield from (Suggestion(each, each) for each in KINDS)
        return
    level = _level(kind, here.path)
    if isinstance(level, Keys):
        if here.key is None:
            yield from (_key(each) for each in level.keys if each.name not in here.beside)
            return
        key = level.named(here.key)
        if key:
            yield from _values(manual, page, key)
    elif isinstance(level, ByName) and here.key is None:
        names = form_of(level.name).suggestions
        yield from (Suggestion(each, f"{each}:") for each in names if each not in here.beside)
    elif isinstance(level, ByName) and isinstance(level.item, One):
        yield from _choices(form_of(level.item.type))


def _level(kind: str, path: tuple[str, ...]) -> Value | None:
    """Return the keys that may stand at this level; without a kind only that one."""
    keys = keys_of(kind) if kind in KINDS else Keys(keys_of("page").keys[:1])
    found = at(keys, path)
    while isinstance(found, Many):
        found = found.item
    return found


def _key(key: Key) -> Suggestion:
    inner = isinstance(key.value, Keys | ByName)
    insert = f"{key.name}:" if inner else f"{key.name}: "
    return Suggestion(key.name, insert, "needed" if key.needed else "", _about(key))


def _values(manual: Manual, page: Page, key: Key) -> Iterator[Suggestion]:
    if key.to == "family":
        yield Suggestion(EVERY_FAMILY, EVERY_FAMILY, "every family")
    if key.to in SCHEMES:
        yield from _ids(manual, page, key.to)
        return
    value = key.value.item if isinstance(key.value, Many) else key.value
    if isinstance(value, One) and value.type is ReadingName:
        yield from _readings(manual, page)
    elif isinstance(value, One):
        yield from _choices(form_of(value.type))


def _readings(manual: Manual, page: Page) -> Iterator[Suggestion]:
    """Offer the readings with limits that the procedures of the page's checks take."""
    checks = page.checks.values() if isinstance(page, Fault) else ()
    named = dict.fromkeys(id_.value for each in checks for id_ in each.procedure)
    for procedure in (manual.procedures[id_] for id_ in named if id_ in manual.procedures):
        for id_, each in procedure.readings.items():
            if each.limits:
                yield Suggestion(id_, id_, each.name.value, procedure.title.value)


def _choices(form: Form) -> Iterator[Suggestion]:
    yield from (Suggestion(each, each) for each in (*form.choices, *form.suggestions))


def _ids(manual: Manual, page: Page, scheme: str) -> Iterator[Suggestion]:
    if scheme not in SCHEMES:
        return
    for name in candidates(manual, page, scheme):
        told = _told(manual, page, scheme, name)
        yield Suggestion(name, name, told.partition("\n")[0], told)


def _told(manual: Manual, page: Page, scheme: str, name: str) -> str:
    """Say what an id stands for: its title, and what matters of it."""
    found = matches(manual, page, scheme, name)
    if not found:
        return ""
    thing = found[0].thing
    more = ""
    if isinstance(thing, Fastener):
        more = thing.torque.written
    elif isinstance(thing, Hazard):
        more = f"{thing.signal.value.upper()}: {thing.harm.value} {thing.avoid.value}"
    elif isinstance(thing, Page):
        more = thing.summary.value
    return f"{found[0].title}\n\n{more}" if more else found[0].title


def _about(key: Key) -> str:
    value = key.value.item if isinstance(key.value, Many) else key.value
    if not isinstance(value, One) or key.to:
        return key.help
    form = form_of(value.type)
    example = f", e.g. {form.example}" if form.example and not form.choices else ""
    return f"{key.help}\n\nWritten as: {form.words}{example}."
