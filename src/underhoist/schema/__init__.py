"""The front matter described from the model: for JSON Schema, the manual's own page and editors."""

from underhoist.schema.forms import Form, form_of
from underhoist.schema.json_schema import json_schema
from underhoist.schema.keys import ByName, Key, Keys, Many, One, Value, at, keys_of
from underhoist.schema.known import known_ids

__all__ = [
    "ByName", "Form", "Key", "Keys", "Many", "One", "Value",
    "at", "form_of", "json_schema", "keys_of", "known_ids",
]  # fmt: skip
