"""The files that the live part of a complaint's page and the job card find causes from."""

import json
from collections.abc import Iterable, Iterator, Mapping

from underhoist_calculators import all_calculators
from underhoist_calculators.fault_finding.complaint import Complaint
from underhoist_calculators.fault_finding.plain import as_plain

from underhoist.complaints import complaint_of
from underhoist.fault_families import causes_of, checks_of, families_of, procedures_for
from underhoist.links import page_address
from underhoist.model import Check, Fault, Manual
from underhoist.model.values import Id
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.place import Placed

type Json = dict[str, object]

FOLDER = "fault/data/"

FORMAT = 1
"""Version of this shape. Cards may meet an older one, so it must stay readable."""


def complaint_files(site: Site, sheets: Mapping[str, Sheet]) -> Iterator[tuple[str, str]]:
    """Yield path and text of one file a fault; `sheets` are the finished pages by address.

    A fault without a sheet is left out.
    """
    for fault in site.manual.faults.values():
        sheet = sheets.get(page_address(fault.file))
        if sheet is None:
            continue
        data = _fault(site.manual, fault) | {"revision": sheet.revision}
        text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
        yield f"{FOLDER}{fault.id}.json", text


def _fault(manual: Manual, fault: Fault) -> Json:
    """Give the fault, and by family its complaint; a family whose table is at odds is left out."""
    tables = {id_: complaint_of(manual, fault, id_) for id_ in families_of(manual, fault)}
    known = {id_: complaint for id_, complaint in tables.items() if complaint}
    return {
        "format": FORMAT,
        "id": fault.id,
        "title": fault.title.value,
        "complaint": fault.complaint.value,
        "url": page_address(fault.file),
        "families": [{"id": id_, "title": manual.families[id_].title.value} for id_ in known],
        "by_family": {id_: _family(manual, fault, id_, each) for id_, each in known.items()},
    }


def _family(manual: Manual, fault: Fault, family: str, complaint: Complaint) -> Json:
    return {
        "complaint": as_plain(complaint),
        "levels": {
            level.name: _level(manual, level.name)
            for check in complaint.checks
            for level in complaint.way(check.access)
        },
        "checks": {
            id_: {
                "procedures": _procedures(manual, procedures_for(manual, each.procedure, family)),
                "decided_by": [*_readings(manual, each, family), *_calculators(each)],
            }
            for id_, each in checks_of(manual, fault, family).items()
        },
        "causes": {
            id_: {
                "procedures": _procedures(manual, procedures_for(manual, each.procedures, family))
            }
            for id_, each in causes_of(fault, family).items()
        },
    }


def _procedures(manual: Manual, ids: Iterable[str]) -> list[Json]:
    pages = (manual.procedures[id_] for id_ in ids)
    return [
        {"id": each.id, "title": each.title.value, "url": page_address(each.file)} for each in pages
    ]


def _level(manual: Manual, name: str) -> Json:
    access = manual.access[name]
    way: Iterable[Placed[Id]] = [access.procedure] if access.procedure else []
    procedures = _procedures(manual, procedures_for(manual, way, None))
    meaning = access.meaning.value if access.meaning else ""
    return {"meaning": meaning, "procedure": procedures[0] if procedures else None}


def _readings(manual: Manual, check: Check, family: str) -> Iterator[Json]:
    """Give the readings that settle the check, each with the procedure that takes it."""
    for procedure in procedures_for(manual, check.procedure, family):
        taken = manual.procedures[procedure].readings
        for each in check.readings:
            if each.value in taken and taken[each.value].limits:
                yield {"kind": "reading", "procedure": procedure, "reading": each.value}


def _calculators(check: Check) -> Iterator[Json]:
    titles = {each.name: each.title for each in all_calculators()}
    for id_, answers in check.calculators.items():
        if id_ in titles:
            yield {
                "kind": "calculator",
                "calculator": id_,
                "title": titles[id_],
                "bad": [each.value for each in answers.bad],
                "good": [each.value for each in answers.good],
            }
