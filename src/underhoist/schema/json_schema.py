"""The front matter of every kind of page as JSON Schema, draft 7: the one that editors know best.

A schema sees one page. What several pages must agree on, and which units there are, is the
check's business; what this schema refuses the check refuses too.
"""

from collections.abc import Mapping
from typing import Any

from underhoist.schema.forms import Form, form_of
from underhoist.schema.keys import ByName, Key, Keys, Many, One, Value, keys_of
from underhoist.source import KINDS

DRAFT = "http://json-schema.org/draft-07/schema#"
TEXT = ["string", "number", "boolean"]
"""What YAML makes of a text: a title such as 1972 is a number to it."""

type Schema = dict[str, Any]
type Known = Mapping[str, tuple[str, ...]]


def json_schema(known: Known | None = None) -> Schema:
    """Return the schema; with the ids that the manual knows, they are the only ones allowed."""
    return {
        "$schema": DRAFT,
        "title": "Front matter of a page of a workshop manual",
        "type": "object",
        "required": ["kind"],
        "properties": {"kind": {"description": keys_of("page").keys[0].help, "enum": [*KINDS]}},
        "allOf": [_branch(kind) for kind in KINDS],
        "definitions": {kind: _keys(keys_of(kind), known or {}) for kind in KINDS},
    }


def _branch(kind: str) -> Schema:
    is_kind = {"properties": {"kind": {"const": kind}}, "required": ["kind"]}
    return {"if": is_kind, "then": {"$ref": f"#/definitions/{kind}"}}


def _keys(keys: Keys, known: Known) -> Schema:
    return {
        "type": "object",
        "properties": {key.name: _key(key, known) for key in keys.keys},
        "required": [key.name for key in keys.keys if key.needed],
        "additionalProperties": False,
    }


def _key(key: Key, known: Known) -> Schema:
    ids = known.get(key.to or "")
    return {"description": key.help, **_value(key.value, ids, known)}


def _value(value: Value, ids: tuple[str, ...] | None, known: Known) -> Schema:
    match value:
        case One():
            return {"enum": [*ids]} if ids is not None else _one(form_of(value.type))
        case Many():
            item = _value(value.item, ids, known)
            return {"anyOf": [item, {"type": "array", "items": item}]}
        case ByName():
            names = form_of(value.name).pattern
            named = {"propertyNames": {"pattern": names}} if names else {}
            return {
                "type": "object",
                **named,
                "additionalProperties": _value(value.item, ids, known),
            }
        case Keys():
            return _keys(value, known)


def _one(form: Form) -> Schema:
    if form.choices:
        return {"enum": [each for choice in form.choices for each in _spellings(choice)]}
    example = {"examples": [form.example]} if form.example else {}
    if form.number:
        limits: Schema = {"minimum": form.number.least}
        if form.number.most != float("inf"):
            limits["maximum"] = form.number.most
        example = {"examples": [float(form.example) if not form.whole else int(form.example)]}
        return {"type": "integer" if form.whole else "number", **limits, **example}
    if form.pattern:
        return {"type": "string", "pattern": form.pattern, **example}
    if form.suggestions:
        return {"type": "string", "minLength": 1, "examples": [*form.suggestions]}
    return {"type": TEXT, "minLength": 1}


def _spellings(choice: str) -> tuple[str | float, ...]:
    """Return a choice as YAML reads it: 8.8 is a number there."""
    try:
        return choice, float(choice)
    except ValueError:
        return (choice,)
