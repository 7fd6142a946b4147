"""Any text as front matter, and any value at any place of it: a page, or findings with lines."""

import json

import attrs
import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from mutated import originals
from tries import tries

from underhoist import rules
from underhoist.model import Page
from underhoist.place import Placed
from underhoist.schema import keys_of
from underhoist.schema.keys import ByName, Keys, Many, One
from underhoist.source import KINDS, read
from underhoist.source import compose as composing
from underhoist.source.structure import GIVEN

CODES = {rule.code for rule in rules.ALL}
PAGES = originals()
FRONTS = {
    file: yaml.load(text.split("---\n")[1], Loader=yaml.BaseLoader)  # noqa: S506 - texts only
    for file, text in PAGES.items()
}
WORDS = st.sampled_from([
    "", " ", "-", "any", "apprentice", "kestrel-3", "set-band", "1-2", "0", "-1", "2.92", "1e999",
    "9" * 400, "nan", ".inf", "NaN", "true", "null", "~", "9 lbf*ft", "65 to 80 degC", "10² mm",
    "1,200 N·m", "<script>alert(1)</script>", "javascript:alert(1)", "../../../etc/passwd", "<<",
    "__proto__", "constructor", "torque:band-seat", "{{ x }}", "\x1b[31m", "\u202e", "\u2028",
    "\x00", "k\u0435strel", "ｓenior", "2026-11-26", "0x1F", "1_000", "12:30:45", "=", "50 %",
    "150 %", "often", "!x", "&a", "*a", "title", "x" * 3000,
])  # fmt: skip
TEXT = WORDS | st.text(max_size=20)
VALUES = st.recursive(
    TEXT | st.integers() | st.floats() | st.booleans() | st.none(),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(TEXT, inner, max_size=4),
    max_leaves=8,
)
SIGNS = st.lists(st.sampled_from([
    *"{}[]:,-#&*!|>%@`'\"\\ \t\n?~", "---\n", "...\n", "- ", ": ", "\n  ", "kind: page\n", "&a ",
    "title: A\n", "kind: fault\n", "<<: *a\n", "*a", "!!python/object:os.system ", "!!binary ",
    "|\n", ">-\n", "? [a]\n: b\n", "\r", "\u0085", "\ufeff", "\ud800", "é", "causes:\n  a:\n",
    "checks: {a: [b]}\n",
]), max_size=25).map("".join)  # fmt: skip
DUMPER = getattr(yaml, "CSafeDumper", yaml.SafeDumper)


def sound(file, text):
    """Read the page, hold that each finding is one that a person can use, and return the page."""
    made = read(file, text.encode("utf-8", "surrogatepass"))
    assert (made.page is None) == bool(made.findings)
    lines = len(text.replace("\r\n", "\n").replace("\r", "\n").split("\n"))
    for each in made.findings:
        assert each.code in CODES
        assert each.at.file == file and 1 <= each.at.line <= lines and each.at.column >= 1
        assert each.wrong.endswith((".", "?")) and each.mend.endswith((".", "?"))
        assert len(each.written) <= 60 and each.written.isprintable()
    return made.page


def page_text(front):
    return f"---\n{yaml.dump(front, Dumper=DUMPER, allow_unicode=True, sort_keys=False)}---\n"


@tries(300)
@given(st.sampled_from(sorted(PAGES)), SIGNS | st.text(max_size=200))
def test_any_text(file, text):
    sound(file, f"---\n{text}\n---\n")


def shaped(form):
    """Values in the shape that the model wants, of which one in some is any other."""
    match form:
        case Keys():
            inner = {key.name: shaped(key.value) for key in form.keys}
            right = st.fixed_dictionaries({}, optional=inner)
        case ByName():
            right = st.dictionaries(st.sampled_from(["seat", "rear-seal", "1-2", "<b>"]) | TEXT,
                                    shaped(form.item), max_size=2)  # fmt: skip
        case Many():
            right = st.lists(shaped(form.item), max_size=2)
        case One():
            return TEXT | VALUES
    return st.one_of(right, right, right, VALUES)


SHAPES = {kind: shaped(keys_of(kind)) for kind in KINDS}


@tries(150)
@given(st.sampled_from(sorted(KINDS)), st.data())
def test_any_value_in_the_shape_of_a_page(kind, data):
    front = data.draw(SHAPES[kind])
    more = {"kind": kind, "title": "A", "summary": "For a test."}
    sound("any.md", page_text({**more, **front} if isinstance(front, dict) else front))


@st.composite
def changed(draw):
    """A page's front matter with one to three of its values, at any depth, become any other."""
    file = draw(st.sampled_from(sorted(FRONTS)))
    front = json.loads(json.dumps(FRONTS[file]))
    for _ in range(draw(st.integers(1, 3))):
        held = front
        while True:
            places = list(held) if isinstance(held, dict) else list(range(len(held)))
            at = draw(st.sampled_from(places)) if places else None
            if at is None or not isinstance(held[at], dict | list) or draw(st.booleans()):
                break
            held = held[at]
        if at is not None:
            held[at] = draw(VALUES)
    return file, front


@tries(200)
@given(changed())
def test_any_value_at_any_place(page):
    file, front = page
    sound(file, page_text(front))


TOP = [
    (kind, each.name)
    for kind, page in KINDS.items()
    for each in attrs.fields(page)
    if each.name not in GIVEN
]


def test_every_key_of_every_kind_is_among_them():
    assert len(TOP) > 50 and {kind for kind, _ in TOP} == set(KINDS)


@tries(250)
@given(st.sampled_from(TOP), VALUES)
def test_any_value_under_any_key(at, value):
    kind, key = at
    file = next(file for file, front in FRONTS.items() if front["kind"] == kind)
    sound(file, page_text({**FRONTS[file], key: value}))


def values(thing):
    """What a page says, without where it says it."""
    if isinstance(thing, Placed):
        return values(thing.value)
    if attrs.has(type(thing)) and not hasattr(thing, "magnitude"):
        return {each.name: values(getattr(thing, each.name)) for each in attrs.fields(type(thing))}
    if isinstance(thing, dict):
        return {key: values(inner) for key, inner in thing.items()}
    return [values(each) for each in thing] if isinstance(thing, tuple | list) else str(thing)


@pytest.mark.parametrize("file", sorted(PAGES))
def test_a_page_written_in_another_way_says_the_same(file):
    """Blocks, flow and JSON are the same values."""
    block = sound(file, page_text(FRONTS[file]))
    flow = sound(file, f"---\n{json.dumps(FRONTS[file], ensure_ascii=False)}\n---\n")
    assert isinstance(block, Page)
    assert values(block) | {"body": 0} == values(flow) | {"body": 0}


@pytest.mark.parametrize("end", ["\u0085", "\u2028", "\u2029"])
def test_a_line_is_one_that_editors_count(end):
    made = read("a.md", f'---\nkind: page\ntitle: "A{end}{end}B"\nhue: red\n---\n'.encode())
    unknown = [each for each in made.findings if each.code == "unknown-key"]
    assert [(each.at.line, each.at.column) for each in unknown] == [(4, 1)]


@pytest.mark.parametrize("loader", ["CBaseLoader", "BaseLoader"])
@pytest.mark.parametrize("end", ["\u0085", "\u2028", "\u2029"])
@pytest.mark.parametrize(
    ("line", "column"),
    [('hue: "red', 6), ("hue: [red", 6), ("\thue: red", 1), ("hue: a: b", 7), ("hue: \x07", 6)],
)
def test_a_complaint_stands_on_the_line_that_editors_count(monkeypatch, loader, end, line, column):
    monkeypatch.setattr(composing, "LOADER", getattr(yaml, loader))
    made = read("a.md", f'---\nkind: page\ntitle: "A{end}{end}B"\n{line}\n---\n'.encode())
    assert [(each.code, each.at.line, each.at.column) for each in made.findings] == [
        ("front-matter", 4, column)
    ]


@pytest.mark.parametrize("end", ["\u0085", "\u2028", "\u2029"])
def test_a_mend_behind_an_odd_line_end_puts_right_what_it_means(end):
    text = f'---\n{{title: "A{end}B", kind: procedur, summary: C}}\n---\n'
    edit = read("a.md", text.encode()).findings[0].edit
    line = text.split("\n")[edit.line - 1]
    assert line[edit.column - 1 : edit.end_column - 1] == "procedur"
    assert edit.text == "procedure"
