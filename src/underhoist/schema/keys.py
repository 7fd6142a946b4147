"""The keys of each kind of front matter as a tree, walked out of the model's classes."""

# ruff: noqa: ANN401  (types are the values here)

from collections.abc import Iterable, Mapping
from functools import cache
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin

from attrs import NOTHING, Attribute, fields, frozen, has

from underhoist.place import Placed
from underhoist.source import KINDS
from underhoist.source.structure import GIVEN


@frozen
class One:
    """One value of this type of the model."""

    type: Any


@frozen
class Many:
    """A list of values; one alone may stand without brackets."""

    item: "Value"


@frozen
class ByName:
    """Values under names that the author chooses, which are of this type."""

    name: Any
    item: "Value"


@frozen
class Keys:
    """A set of keys."""

    keys: "tuple[Key, ...]"

    def named(self, name: str) -> "Key | None":
        """Return the key of this name."""
        return next((key for key in self.keys if key.name == name), None)


type Value = One | Many | ByName | Keys


@frozen
class Key:
    """A key: what it is for, whether the page needs it, and what its ids refer to if they do."""

    name: str
    help: str
    needed: bool
    value: Value
    to: str | None = None


@cache
def keys_of(kind: str) -> Keys:
    """Return the keys of a kind of page. Raises KeyError where there is no such kind."""
    words = "What kind of page this is: it decides which other keys there are."
    first = Key("kind", words, needed=True, value=One(Literal[kind]))
    return Keys((first, *_keys(KINDS[kind]).keys))


def at(keys: Keys, path: Iterable[str]) -> Value | None:
    """Return what stands under these names, one below the other; None where there is no such key.

    Lists are passed through: what is said of an item is said of its list.
    """
    here: Value | None = keys
    for name in path:
        here = _item(here)
        if isinstance(here, Keys):
            key = here.named(name)
            here = key.value if key else None
        elif isinstance(here, ByName):
            here = here.item
        else:
            return None
    return here


def _item(value: Value | None) -> Value | None:
    return value.item if isinstance(value, Many) else value


def _keys(kind: Any) -> Keys:
    attributes: tuple[Attribute[Any], ...] = fields(kind)
    return Keys(tuple(_key(each) for each in attributes if each.name not in GIVEN))


def _key(attribute: "Attribute[Any]") -> Key:
    return Key(
        name=attribute.name,
        help=attribute.metadata["help"],
        needed=attribute.default is NOTHING,
        value=_value(attribute.type),
        to=attribute.metadata.get("to"),
    )


def _value(kind: Any) -> Value:
    origin, arguments = get_origin(kind), get_args(kind)
    if origin in (Union, UnionType):
        return _value(next(each for each in arguments if each is not NoneType))
    if origin is Placed:
        return One(arguments[0])
    if origin is tuple:
        return Many(_value(arguments[0]))
    if origin is Mapping:
        return ByName(arguments[0], _value(arguments[1]))
    if has(kind):
        return _keys(kind)
    raise TypeError(f"the front matter has no value of type {kind}")
