"""The record of earlier builds that travels with a site.

What is read back is input like any other: it is checked whole before anything believes it.
"""

import json
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import cattrs
from attrs import evolve, frozen

from underhoist.history.change import Change, Rank
from underhoist.history.plain import Plain
from underhoist.history.portrait import Portrait, revision

FILE = "changes/record.json"
"""Where a site keeps its record."""

FORMAT = 1
"""Version of the record's shape; an older one is brought up by MIGRATIONS."""

MIGRATIONS: Mapping[int, Callable[[Any], Any]] = {}
"""By the format that it brings up to the next one."""

LARGEST = 200 * 1024 * 1024
"""Bytes of a record that is read: ten times what 3,000 procedures come to."""

DEEPEST = 12
"""Levels of a portrait: the model has fewer."""


class NoRecordError(Exception):
    """The record cannot be used; the text says why, as the end of a sentence."""


@frozen(kw_only=True)
class Entry:
    """One revision of a page and what was different from the one before."""

    revision: str
    date: str
    """Day of the first build of this revision, as 2026-11-25."""
    author: str
    """Initials, "" where the page names nobody."""
    build: int
    changes: tuple[Change, ...] = ()
    new: bool = False
    """Whether the page was new in this build; then there is nothing to compare with."""


@frozen(kw_only=True)
class Kept:
    """A page as it was built."""

    title: str
    file: str
    portrait: dict[str, Any]
    entries: tuple[Entry, ...]
    """Newest first."""


@frozen(kw_only=True)
class Gone:
    """A page that a build no longer had."""

    key: str
    title: str
    file: str


@frozen(kw_only=True)
class BuildNote:
    """A build that was different from the one before."""

    number: int
    date: str
    gone: tuple[Gone, ...] = ()


@frozen(kw_only=True)
class Record:
    """Everything that a later build is compared with."""

    made_by: str = "underhoist"
    format: int = FORMAT
    manual: str
    """Name of the manual, for people."""
    builds: tuple[BuildNote, ...]
    """Newest first."""
    pages: dict[str, Kept]
    """By kind and id: "procedure:set-band"."""


def read(place: Path) -> Record:
    """Read a record from a file, or from the folder of a site. Raises NoRecordError."""
    file = place / FILE if place.is_dir() else place
    try:
        if file.stat().st_size > LARGEST:
            raise NoRecordError("it is larger than any record is")
        return parse(file.read_text(encoding="utf-8"))
    except FileNotFoundError:
        raise NoRecordError("there is none") from None
    except OSError as error:
        raise NoRecordError(f"it cannot be read ({error.strerror})") from None
    except UnicodeDecodeError:
        raise NoRecordError("it is not text") from None


def parse(text: str) -> Record:
    """Read a record's text. Raises NoRecordError."""
    try:
        held: Any = json.loads(text)
    except (ValueError, RecursionError):
        raise NoRecordError("it is no JSON: the file may be cut off") from None
    if not isinstance(held, dict) or held.get("made_by") != "underhoist":  # pyright: ignore[reportUnknownMemberType]
        raise NoRecordError("it was not made by underhoist build")
    try:
        record = _CONVERTER.structure(_brought_up(held), Record)
    except (cattrs.BaseValidationError, TypeError, ValueError, RecursionError) as error:
        problem = error if isinstance(error, cattrs.BaseValidationError) else None
        where = cattrs.transform_error(problem)[0] if problem else str(error)
        raise NoRecordError(f"its shape is wrong ({where})") from None
    for key, kept in record.pages.items():
        if not kept.entries or kept.entries[0].revision != revision(kept.portrait):
            raise NoRecordError(f"what it says of {key} and its revision do not belong together")
    return record


Lines = Mapping[str, tuple[Kept, str]]
"""Pages of a record as they are written, by their key."""


def write(record: Record, known: Lines | None = None) -> str:
    """Write a record as JSON, one page a line, so that a difference can be read.

    A page that is one of the `known` is not written again.
    """
    made = {"made_by": record.made_by, "format": record.format}  # said even where it is the default
    held: dict[str, Any] = {**made, **_CONVERTER.unstructure(evolve(record, pages={}))}
    held.pop("pages")
    pages = ",\n".join(_line(key, page, known or {}) for key, page in record.pages.items())
    return f'{_json(held)[:-1]},"pages":{{\n{pages}\n}}}}\n'


def lines(record: Record, text: str) -> Lines:
    """Return the lines of a record that was written as this text."""
    found = text.split("\n")[1:-2]
    pages = zip(record.pages.items(), found, strict=True)
    return {key: (page, line.removesuffix(",")) for (key, page), line in pages}


def _line(key: str, page: Kept, known: Lines) -> str:
    before = known.get(key)
    if before and before[0] is page:
        return before[1]
    return f"{_json(key)}:{_json(_CONVERTER.unstructure(page))}"


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def _brought_up(held: Any) -> Any:  # noqa: ANN401
    """Bring an older record to our format, step by step."""
    number = held.get("format")
    if not isinstance(number, int) or isinstance(number, bool):
        raise NoRecordError("it does not say its format")
    if number > FORMAT:
        raise NoRecordError("it was made by a newer version of underhoist")
    while number < FORMAT:
        if number not in MIGRATIONS:
            raise NoRecordError(f"its format {number} is not known")
        held = MIGRATIONS[number](held)
        number += 1
    return {**held, "format": FORMAT}


def _portrait(value: Any, _: Any) -> Portrait:  # noqa: ANN401
    if not isinstance(value, dict):
        raise ValueError("a page's portrait is not names with values")
    return {_text(key): _plain(each, 1) for key, each in value.items()}  # pyright: ignore[reportUnknownVariableType, reportUnknownArgumentType]


def _plain(value: Any, depth: int) -> Plain:  # noqa: ANN401
    if depth > DEEPEST:
        raise ValueError("a page's portrait is nested too deep")
    if isinstance(value, list):
        return [_plain(each, depth + 1) for each in value]  # pyright: ignore[reportUnknownVariableType]
    if isinstance(value, dict):
        return {_text(key): _plain(each, depth + 1) for key, each in value.items()}  # pyright: ignore[reportUnknownVariableType, reportUnknownArgumentType]
    return _text(value)


def _text(value: Any, _: Any = None) -> str:  # noqa: ANN401
    if not isinstance(value, str):
        raise ValueError("a text was expected")
    return value


def _whole(value: Any, _: Any = None) -> int:  # noqa: ANN401
    if not isinstance(value, int) or isinstance(value, bool) or value < 0:
        raise ValueError("a whole number was expected")
    return value


def _yes_or_no(value: Any, _: Any = None) -> bool:  # noqa: ANN401
    if not isinstance(value, bool):
        raise ValueError("true or false was expected")
    return value


def _rank(value: Any, _: Any) -> Rank:  # noqa: ANN401
    return Rank(_whole(value))


def _converter() -> cattrs.Converter:
    converter = cattrs.Converter(forbid_extra_keys=True, omit_if_default=True)
    converter.register_structure_hook(str, _text)
    converter.register_structure_hook(int, _whole)
    converter.register_structure_hook(bool, _yes_or_no)
    converter.register_structure_hook(Rank, _rank)
    converter.register_structure_hook_func(lambda kind: kind == dict[str, Any], _portrait)
    converter.register_unstructure_hook_func(
        lambda kind: kind == dict[str, Any], lambda portrait: portrait
    )  # it is plain already
    return converter


_CONVERTER = _converter()
