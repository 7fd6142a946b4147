"""A reference to something that is not there.

An id in the front matter, a reference such as `<torque:band-seat>` in the text, and an ordinary
link to a page or a drawing must all lead somewhere. A torque or a part is looked up on the page
itself and then in its unit family; where two of the page's families know it, its family is written
before it, as in `torque:kestrel-3/band-seat`. What stands in code or in a comment is no link: the
page shows the one as it stands and leaves the other out.

Good:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Hold the screw with the <tool:square-socket>.
```

Bad:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Hold the screw with the <tool:square-sockt>.
```
"""

from collections.abc import Iterator
from functools import lru_cache
from pathlib import PurePosixPath

from attrs import evolve

from underhoist.finding import Edit, Finding, Severity
from underhoist.link_targets import KNOWN_ELSEWHERE, Inside, file_links
from underhoist.model import Draft, Fault, Manual, Page, Procedure
from underhoist.place import Place
from underhoist.references import (
    OWNED,
    SCHEMES,
    Reference,
    candidates,
    find,
    matches,
    other_links,
)
from underhoist.rules._edits import in_text, retyped
from underhoist.rules._ids import ids_of
from underhoist.rules._pages import TEXTS
from underhoist.words import listing, meant, nearest, quote, sure

CODE = "dead-reference"
SEVERITY = Severity.STOP
PAGES = TEXTS

NAMES = {"family": "unit family", "calc": "calculator"}
"""Schemes whose word is not what a sentence calls the thing."""

_KNOWN_SCHEMES = SCHEMES | KNOWN_ELSEWHERE

MOST_OFFERED = 6
"""Names that a finding lists when none is near."""


def check_page(manual: Manual, page: Page) -> Iterator[Finding]:
    """Ids, references and links that lead nowhere, and those that could mean two things."""
    for to, placed in () if isinstance(page, Draft) else ids_of(page):
        if not (to == "family" and placed.value == "any"):
            for found in _named(manual, page, to, placed.value, placed.at):
                near = _sure(manual, page, to, placed.value)
                yield evolve(found, edit=retyped(placed, near) if near else None)
    yield from _in_text(manual, page)
    yield from _without_address(page)
    yield from _misspelt_schemes(page)
    yield from _missing_files(manual, page)


def _in_text(manual: Manual, page: Page) -> Iterator[Finding]:
    by_name = {(each.scheme, each.id): each for each in find(page.body, page.file)}
    unsound = {
        name
        for name, each in by_name.items()
        if not (isinstance(page, Draft) and _is_its_own(each))
        and any(_named(manual, page, *name, each.at))
    }
    for reference in find(page.body, page.file) if unsound else ():
        name = reference.scheme, reference.id
        for found in _named(manual, page, *name, reference.at) if name in unsound else ():
            yield evolve(found, edit=_renamed(manual, page, reference))


def _is_its_own(reference: Reference) -> bool:
    """Whether the name is looked up on the page and its family, which a draft cannot tell."""
    return reference.scheme in OWNED and "/" not in reference.id


def _named(manual: Manual, page: Page, to: str, name: str, at: Place) -> Iterator[Finding]:
    """Yield the finding for one id, if it does not name exactly one thing."""
    if to == "cause":
        known = list(page.causes) if isinstance(page, Fault) else []
        if name in known:
            return
    else:
        targets = matches(manual, page, to, name)
        if len(targets) > 1:
            yield _ambiguous(to, name, at, [target.id for target in targets])
        if targets or _is_unread(manual, page, to, name):
            return
        known = candidates(manual, page, to)
    thing = NAMES.get(to, to)
    wrong = f"There is no {thing} {quote(name)} {_where(to)}."
    yield Finding(CODE, SEVERITY, at, quote(name), wrong, meant(name, known, _offer(thing, known)))


def _sure(manual: Manual, page: Page, to: str, name: str) -> str | None:
    """Return the id that is surely meant; of two families' things of one name neither is."""
    if to == "cause" or matches(manual, page, to, name):
        return None
    return sure(name, candidates(manual, page, to))


def _renamed(manual: Manual, page: Page, reference: Reference) -> Edit | None:
    near = _sure(manual, page, reference.scheme, reference.id)
    label_end = reference.offset + len(reference.label)
    start = page.body.text.find(f":{reference.id}", label_end) + 1
    return in_text(page, start, start + len(reference.id), near) if near and start else None


def _where(to: str) -> str:
    return {"cause": "on this page", "torque": "for this page", "part": "for this page"}.get(
        to, "in this manual"
    )


def _offer(thing: str, known: list[str]) -> str:
    if not known:
        return f"Write the {thing} first, or take the reference out."
    more = " and others" if len(known) > MOST_OFFERED else ""
    return f"Known here: {listing(known) if not more else ', '.join(known[:MOST_OFFERED])}{more}."


def _ambiguous(to: str, name: str, at: Place, full: list[str]) -> Finding:
    wrong = f"Two of this page's unit families have a {to} {name}."
    return Finding(CODE, SEVERITY, at, name, wrong, f"Write {listing(full, 'or')}.")


def _is_unread(manual: Manual, page: Page, to: str, name: str) -> bool:
    """Whether the thing may stand on a page that has faults of its own to mend first."""
    owner, slash, _ = name.partition("/")
    if owner in manual.unread:
        return True
    if slash or to not in {"torque", "part"} or not isinstance(page, Procedure | Fault):
        return False
    return any(each.value not in {*manual.families, "any"} for each in page.unit_family)


def _without_address(page: Page) -> Iterator[Finding]:
    """Find `[the seat]()`, of which the page would show the words alone."""
    for link in other_links(page.body, page.file):
        if link.target.strip():
            continue
        what = "image" if link.form == "image" else "link"
        whole = f"{'!' if link.form == 'image' else ''}[{link.label}]()"
        mend = "Write where it leads between the round brackets, or take the brackets out."
        yield Finding(CODE, SEVERITY, link.at, quote(whole), f"The {what} has no address.", mend)


def _misspelt_schemes(page: Page) -> Iterator[Finding]:
    """`torqe:band-seat`: a scheme that is near one of ours and no address of the web."""
    for link in other_links(page.body, page.file):
        scheme, colon, _ = link.target.partition(":")
        if not colon or scheme.lower() in _KNOWN_SCHEMES or not scheme.isalpha():
            continue
        if near := nearest(scheme, SCHEMES):
            wrong = f"There is no kind of reference {scheme}."
            yield Finding(
                CODE, SEVERITY, link.at, quote(link.target), wrong, f"Did you mean {near}?"
            )


def _missing_files(manual: Manual, page: Page) -> Iterator[Finding]:
    for link, target in file_links(page):
        if not isinstance(target, Inside) or target.path in manual.files or target.is_made:
            continue
        near = _nearest_file(tuple(manual.files), target.path)
        mend = "Add the file, or take the link out."
        if near:
            mend = f"Did you mean {target.relative(near)}?"
        wrong = f"There is no file {quote(target.path)} in this manual."
        yield Finding(CODE, SEVERITY, link.at, quote(link.target), wrong, mend)


def _nearest_file(files: tuple[str, ...], path: str) -> str | None:
    """Find the file of the same ending whose name is nearest."""
    wanted = PurePosixPath(path)
    by_stem = _by_stem(files, wanted.suffix)
    near = nearest(wanted.stem, by_stem)
    return by_stem[near] if near else None


@lru_cache
def _by_stem(files: tuple[str, ...], ending: str) -> dict[str, str]:
    alike = sorted(file for file in files if file.endswith(ending))
    return {PurePosixPath(file).stem: file for file in alike}
