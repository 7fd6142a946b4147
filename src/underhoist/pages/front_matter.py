"""The pages "Front matter, key by key", made from the same tree as the schema."""

from collections.abc import Iterator

from markupsafe import Markup

from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, contents, entry, join, section, table
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.schema import ByName, Form, Key, Keys, Many, One, Value, form_of, keys_of
from underhoist.source import KINDS

ADDRESS, TITLE = "front-matter/", "Front matter, key by key"
_SUMMARY = "Every key that a page can have, whether it must, what it is for and how it is written."
_HEADS = ("Key", "Needed", "What it is", "Written as")
_SETS = Markup("Several sets of keys, a dash before each.")
_CHOSEN = "(id)"
"""Stands where the author chooses a name."""


def front_matter_sheets(site: Site) -> Iterator[Sheet]:
    """Make the list of the kinds of page, and a page with the keys of each."""
    here = Here(site, ADDRESS)
    ways = contents(
        entry(here.to(f"{ADDRESS}{kind}/"), f"kind: {kind}", about)
        for kind, about in _ABOUT.items()
    )
    html = join((purpose(_SUMMARY), ways, closing(site)))
    yield Sheet(address=ADDRESS, kind="index", title=TITLE, summary=_SUMMARY, html=html)
    for kind in KINDS:
        yield Sheet(
            address=f"{ADDRESS}{kind}/",
            kind="index",
            title=f"Front matter: kind: {kind}",
            summary=_ABOUT[kind],
            html=join((purpose(_ABOUT[kind]), _kind(kind), closing(site))),
            trail=((TITLE, ADDRESS),),
        )


_ABOUT = {
    "unit-family": "A family of transmissions and its figures.",
    "procedure": "A job, step by step.",
    "fault": "A complaint, its causes and the checks.",
    "tool": "Something to fetch.",
    "hazard": "A danger and how to avoid it.",
    "page": "Any other text.",
}
_IDS = {
    "family": "unit families", "tool": "tools", "hazard": "hazards", "procedure": "procedures",
    "torque": "fasteners", "part": "parts", "cause": "the causes on this page",
}  # fmt: skip
"""What an id is one of, in the plural."""


def _kind(kind: str) -> Markup:
    rows = list(_rows(keys_of(kind), ()))
    caption = "A key further in is needed where the key before it stands."
    return section("uh-keys", "Every key", table("", _HEADS, rows, caption))


def _rows(keys: Keys, above: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    for key in keys.keys:
        path = (*above, key.name)
        yield _code(" \u203a ".join(path)), "Yes" if key.needed else "No", key.help, _written(key)
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


def _written(key: Key) -> Markup:
    if key.to is None:
        return _value(key.value)
    many = isinstance(key.value, Many)
    words = f"Ids of {_IDS[key.to]}, in brackets." if many else f"An id of {_IDS[key.to]}."
    return Markup("{}").format(words)


def _value(value: Value) -> Markup:
    match value:
        case One():
            return _form(form_of(value.type))
        case Many():
            inner = _value(value.item)
            return Markup("Several, in brackets. {}").format(inner) if inner else _SETS
        case ByName():
            if names := form_of(value.name).suggestions:
                return Markup("Keys below {}.").format(join(map(_code, names), " or "))
            if not isinstance(value.item, One):
                return Markup("Keys below an id that you choose.")
            return Markup("Below a name that you choose: {}").format(_value(value.item))
        case Keys():
            return NOTHING


def _form(form: Form) -> Markup:
    words = Markup("{}{}").format(form.words[:1].upper(), form.words[1:])
    if form.choices:
        return join(map(_code, form.choices), ", ")
    example = Markup(", e.g. {}").format(_code(form.example)) if form.example else NOTHING
    return Markup("{}{}.").format(words, example)


def _code(text: str) -> Markup:
    return Markup("<code>{}</code>").format(text)
