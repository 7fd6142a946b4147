"""Findings and names as plain data, for the page that shows them."""

from typing import TypedDict

from attrs import asdict

from underhoist.finding import Edit, Finding
from underhoist.model import Manual, Page
from underhoist.references import candidates, matches

SCHEMES = ("torque", "procedure", "reading", "part", "tool", "hazard", "fault", "family", "calc")
"""What a text may refer to, the most wanted first."""


class Told(TypedDict):
    """A finding; the keys are those of `underhoist check --json`, and how it is mended."""

    file: str
    line: int
    column: int
    code: str
    severity: str
    written: str
    wrong: str
    mend: str
    edit: dict[str, str | int] | None


class Name(TypedDict):
    """Something that the text may refer to."""

    scheme: str
    id: str
    title: str


def told(finding: Finding) -> Told:
    """Return the finding as data."""
    return Told(
        file=finding.at.file,
        line=finding.at.line,
        column=finding.at.column,
        code=finding.code,
        severity=finding.severity.value,
        written=finding.written,
        wrong=finding.wrong,
        mend=finding.mend,
        edit=_edit(finding.edit),
    )


def _edit(edit: Edit | None) -> dict[str, str | int] | None:
    return asdict(edit) if edit else None


def names(manual: Manual, page: Page) -> list[Name]:
    """List everything that the page may refer to, nearest first, each in its shortest form."""
    return [
        Name(scheme=scheme, id=id_, title=found[0].title)
        for scheme in SCHEMES
        for id_ in candidates(manual, page, scheme)
        if (found := matches(manual, page, scheme, id_))
    ]
