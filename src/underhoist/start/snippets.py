"""Snippets for Visual Studio Code, which shows them while one types, without any extension."""

from collections.abc import Iterator, Mapping
from itertools import count
from typing import Any

from underhoist.prose import STEP_WORDS
from underhoist.schema import ByName, Form, Key, Keys, Many, One, Value, form_of, keys_of
from underhoist.source import KINDS
from underhoist.words import NOT_WRITTEN

type Json = dict[str, Any]
type Known = Mapping[str, tuple[str, ...]]

_REFERENCES = {
    "torque": "A torque with its unit, linked, and its plate in a step.",
    "part": "A part's name, linked.",
    "tool": "A tool's name, linked.",
    "hazard": "A caution; first in a step it stands before the action.",
    "procedure": "A procedure's title, linked.",
    "family": "A family's title, linked.",
}
_STEP_HELP = {
    "Why": "The reason for this step.",
    "Good": "How it looks, sounds or feels when it is right.",
    "Bad": "How it looks when it is wrong, and what then.",
    "Mistake": "What everyone does wrong here.",
    "Note": "Anything else worth knowing.",
    "Second check": "What somebody else looks at before the work goes on.",
    "Off": "What comes off in this step, with commas between.",
    "Back on": "What this step puts back, in the same words.",
}


def snippets(known: Known) -> dict[str, Json]:
    """Return the snippets by name: whole pages, every key, references, paragraphs of a step."""
    made: dict[str, Json] = {}
    for kind in KINDS:
        page = _Writer(known).page(keys_of(kind))
        made[f"page of kind {kind}"] = _snippet(f"new-{kind}", f"A page of kind {kind}.", page)
        for key in _all_keys(keys_of(kind)):
            snippet = _snippet(key.name, key.help, _Writer(known).key(key))
            names = (key.name, f"{key.name} ({kind})", f"{key.name}: {key.help}")
            made[next(each for each in names if made.get(each, snippet) == snippet)] = snippet
    for scheme, words in _REFERENCES.items():
        target = _Writer(known).chosen(known.get(scheme, ()), "id")
        made[f"reference to a {scheme}"] = _snippet(f"<{scheme}", words, [f"<{scheme}:{target}>"])
    for word in STEP_WORDS:
        made[f"paragraph {word}"] = _snippet(word, _STEP_HELP[word], [f"{word}: $0"])
    return made


def _snippet(prefix: str, words: str, body: list[str]) -> Json:
    return {"prefix": prefix, "scope": "markdown", "description": words, "body": body}


def _all_keys(keys: Keys) -> Iterator[Key]:
    """Every key at any depth; `kind` alone is chosen with the whole page."""
    for key in keys.keys:
        if key.name != "kind":
            yield key
        yield from _all_keys(_inner(key.value))


def _inner(value: Value) -> Keys:
    while isinstance(value, Many | ByName):
        value = value.item
    return value if isinstance(value, Keys) else Keys(())


class _Writer:
    """Writes the body of one snippet: its tab stops are numbered through."""

    def __init__(self, known: Known) -> None:
        self.known = known
        self.stops = count(1)

    def page(self, keys: Keys) -> list[str]:
        needed = [line for key in keys.keys if key.needed for line in self.key(key)]
        return ["---", *needed, "---", "", "$0"]

    def key(self, key: Key) -> list[str]:
        return self.value(key.name, key.value, self.known.get(key.to or ""))

    def value(self, name: str, value: Value, ids: tuple[str, ...] | None) -> list[str]:
        match value:
            case One():
                return [f"{name}: {self.one(form_of(value.type), ids)}"]
            case Many(item=One() as item):
                one = self.one(form_of(item.type), ids)
                return [f'{name}: ["{one}"]' if NOT_WRITTEN in one else f"{name}: [{one}]"]
            case Many():
                first, *more = self.below(value.item)
                return [f"{name}:", f"  - {first}", *(f"    {line}" for line in more)]
            case ByName():
                inner = self.value(f"${{{next(self.stops)}:id}}", value.item, ids)
                return [f"{name}:", *(f"  {line}" for line in inner)]
            case Keys():
                return [f"{name}:", *(f"  {line}" for line in self.below(value))]

    def below(self, value: Value) -> list[str]:
        keys = value.keys if isinstance(value, Keys) else ()
        return [line for key in keys if key.needed for line in self.key(key)]

    def one(self, form: Form, ids: tuple[str, ...] | None) -> str:
        offered = ids or form.choices
        return self.chosen(offered, NOT_WRITTEN)  # an example that stays in would be published

    def chosen(self, offered: tuple[str, ...], otherwise: str) -> str:
        if len(offered) == 1:
            return offered[0]
        if offered:
            return f"${{{next(self.stops)}|{','.join(map(_escaped, offered))}|}}"
        return f"${{{next(self.stops)}:{otherwise}}}"


def _escaped(choice: str) -> str:
    """Escape what ends a choice in a snippet."""
    return choice.replace("\\", "\\\\").replace(",", "\\,").replace("|", "\\|")
