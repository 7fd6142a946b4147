"""The page "Front matter, key by key", made from the same tree as the schema."""

from collections.abc import Iterator

from markupsafe import Markup

from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.html import NOTHING, join, section, table
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.schema import ByName, Form, Key, Keys, Many, One, Value, form_of, keys_of
from underhoist.source import KINDS

ADDRESS, TITLE = "front-matter/", "Front matter, key by key"
_SUMMARY = "Every key that a page can have, whether it must, what it is for and how it is written."
_HEADS = ("Key", "Needed", "What it is", "Written as")
_CHOSEN = "(id)"
"""Stands where the author chooses a name."""


def front_matter_sheet(site: Site) -> Sheet:
    """Make the page: one table for each kind of page."""
    parts = (_kind(kind) for kind in KINDS)
    html = join((purpose(_SUMMARY), *parts, closing(site)))
    return Sheet(address=ADDRESS, kind="index", title=TITLE, summary=_SUMMARY, html=html)


def _kind(kind: str) -> Markup:
    rows = list(_rows(keys_of(kind), ()))
    caption = f"The keys of a page of kind {kind}."
    return section("uh-keys", f"kind: {kind}", table("", _HEADS, rows, caption), id_=kind)


def _rows(keys: Keys, above: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    for key in keys.keys:
        path = (*above, key.name)
        yield _code(" \u203a ".join(path)), _needed(key, above), key.help, _written(key)
        yield from _below(key.value, path)


def _below(value: Value, path: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    match value:
        case Keys():
            yield from _rows(value, path)
        case Many():
            yield from _below(value.item, path)
        case ByName():
            yield from _below(value.item, (*path, _CHOSEN))
        case One():
            pass


def _needed(key: Key, above: tuple[str, ...]) -> str:
    if not key.needed:
        return "If there is one"
    return "Yes, where the key above it stands" if above else "Yes"


def _written(key: Key) -> Markup:
    return join((_value(key.value), _ids(key)), " ")


def _ids(key: Key) -> str:
    return f"Each is the id of a {key.to}." if key.to else ""


def _value(value: Value) -> Markup:
    match value:
        case One():
            return _form(form_of(value.type))
        case Many():
            inner = _value(value.item)
            return Markup("A list: {}").format(inner) if inner else Markup("A list of such keys.")
        case ByName():
            if not isinstance(value.item, One):
                return Markup("Keys below an id that you choose.")
            return Markup("Below a name that you choose: {}").format(_value(value.item))
        case Keys():
            return NOTHING


def _form(form: Form) -> Markup:
    words = Markup("{}{}").format(form.words[:1].upper(), form.words[1:])
    if form.choices:
        codes = join(map(_code, form.choices), ", ")
        return Markup("{}.").format(codes)
    example = Markup(", e.g. {}").format(_code(form.example)) if form.example else NOTHING
    return Markup("{}{}.").format(words, example)


def _code(text: str) -> Markup:
    return Markup("<code>{}</code>").format(text)
