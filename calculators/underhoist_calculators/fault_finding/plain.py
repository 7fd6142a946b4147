"""A complaint as plain data, as JSON knows it, and back."""

from collections.abc import Mapping
from typing import Any, cast

from attrs import asdict

from underhoist_calculators.fault_finding.complaint import (
    CONFIDENCE,
    Cause,
    Check,
    Complaint,
    ComplaintError,
    Level,
)

type Json = dict[str, Any]


def as_plain(complaint: Complaint) -> Json:
    """Give plain data: causes, checks, levels (each a list of objects) and confidence."""
    levels = [asdict(each) for each in complaint.levels.values()]
    plain = asdict(complaint) | {"levels": levels}
    return {**plain, "causes": list(plain["causes"]), "checks": list(plain["checks"])}


def from_plain(data: object) -> Complaint:
    """Read what `as_plain` gives. Raises `ComplaintError` that names the entry."""
    whole = _object("the complaint", data)
    levels = [
        Level(
            name=_text(each, "name"),
            minutes=_number(each, "minutes"),
            through=_text(each, "through") if each.get("through") is not None else None,
        )
        for each in _objects(whole, "levels")
    ]
    causes = tuple(
        Cause(
            id=_text(each, "id"),
            name=_text(each, "name"),
            share=_number(each, "share"),
            mend_minutes=_number(each, "mend_minutes") if "mend_minutes" in each else 0.0,
        )
        for each in _objects(whole, "causes")
    )
    checks = tuple(
        Check(
            id=_text(each, "id"),
            name=_text(each, "name"),
            minutes=_number(each, "minutes"),
            access=_text(each, "access"),
            bad=_shares(each),
        )
        for each in _objects(whole, "checks")
    )
    by_name = {level.name: level for level in levels}
    sure = _number(whole, "confidence") if "confidence" in whole else CONFIDENCE
    return Complaint(causes=causes, checks=checks, levels=by_name, confidence=sure)


def _object(what: str, data: object) -> Json:
    if not isinstance(data, Mapping):
        raise ComplaintError(f"{what} is not an object")
    return dict(cast("Mapping[str, Any]", data))


def _objects(whole: Json, key: str) -> list[Json]:
    found = whole.get(key, [])
    if not isinstance(found, list):
        raise ComplaintError(f"{key} is not a list")
    return [
        _object(f"{key} {number}", each)
        for number, each in enumerate(cast("list[object]", found), 1)
    ]


def _text(each: Json, key: str) -> str:
    value = each.get(key)
    if not isinstance(value, str):
        raise ComplaintError(f"{key} of {each.get('id', each.get('name', 'an entry'))} is no text")
    return value


def _number(each: Json, key: str) -> float:
    value = each.get(key)
    if isinstance(value, bool) or not isinstance(value, int | float):
        whose = each.get("id", each.get("name", "an entry"))
        raise ComplaintError(f"{key} of {whose} is no number")
    return float(value)


def _shares(each: Json) -> dict[str, float]:
    bad = _object(f"bad of {each.get('id', 'a check')}", each.get("bad"))
    return {cause: _number(bad, cause) for cause in bad}
