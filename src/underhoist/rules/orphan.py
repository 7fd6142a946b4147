"""Something that nothing uses.

A plain page that no page links to, a torque or a part that no procedure and no text names, a tool
that nobody fetches, a hazard that no procedure gives and that waits for nothing, a drawing that no
page shows: whoever reads the manual never meets it, and when it goes out of date nobody notices.
Procedures, faults and families stand in the lists and need no link; a page that declares words is
at work in the search; a hazard that is `required_when` something is on watch, with its tools.

Good:

```markdown title="index.md"
Begin with [the band](kestrel-3/set-band.md). How we [number the bays](bays.md).
```

```markdown title="bays.md"
---
kind: page
title: The bays
summary: How the bays are numbered.
---
Bay 1 is nearest the water.
```

Bad:

```markdown title="bays.md"
---
kind: page
title: The bays
summary: How the bays are numbered.
---
Bay 1 is nearest the water.
```
"""

from collections.abc import Iterable, Iterator, Mapping
from pathlib import PurePosixPath

from attrs import frozen

from underhoist.finding import Finding, Severity
from underhoist.link_targets import Inside, file_links
from underhoist.model import Manual, Page
from underhoist.place import Place
from underhoist.references import find, matches
from underhoist.rules._ids import ids_of
from underhoist.rules._pages import Pages
from underhoist.words import quote

CODE = "orphan"
SEVERITY = Severity.LOOK
PAGES = Pages((Page,), repeated=True)

FRONT = "index.md"
OWN = frozenset({"torque", "part", "tool", "hazard", "family"})
"""Schemes whose targets can be orphans; family, because a lost one hides what it owns."""
DRAWINGS = frozenset({".svg", ".png", ".jpg", ".jpeg", ".webp", ".gif", ".avif"})


@frozen
class _Used:
    """What pages use: things by scheme and full id, and files that a page links to or shows."""

    things: frozenset[tuple[str, str]]
    files: frozenset[str]
    lost: frozenset[str]
    """Schemes of which some name leads nowhere: what it meant may look unused."""


def gather(manual: Manual, page: Page) -> _Used:
    """Take what the page uses, itself left out."""
    names = {(to, placed.value) for to, placed in ids_of(page) if to in OWN}
    names |= {(each.scheme, each.id) for each in find(page.body, page.file) if each.scheme in OWN}
    things: set[tuple[str, str]] = set()
    lost: set[str] = set()
    for scheme, name in names:
        targets = matches(manual, page, scheme, name)
        things.update((scheme, each.id) for each in targets if each.thing is not page)
        if not targets and name != "any":
            lost |= {"torque", "part"} if scheme == "family" else {scheme}
    links = (target for _, target in file_links(page) if isinstance(target, Inside))
    files = frozenset(target.path for target in links if target.path != page.file)
    return _Used(frozenset(things), files, frozenset(lost))


def check_gathered(manual: Manual, gathered: Mapping[str, _Used]) -> Iterator[Finding]:
    """Find what nothing uses; nothing is said while a page that may use it cannot be read."""
    if manual.unread:
        return
    used = _together(gathered.values())
    yield from _pages(manual, used)
    yield from _owned(manual, used)
    yield from _drawings(manual, used)


def _together(every: Iterable[_Used]) -> _Used:
    used = tuple(every)
    return _Used(
        frozenset(thing for each in used for thing in each.things),
        frozenset(file for each in used for file in each.files),
        frozenset(scheme for each in used for scheme in each.lost),
    )


def _pages(manual: Manual, used: _Used) -> Iterator[Finding]:
    for page in manual.plain.values():
        if page.file not in used.files and page.file != FRONT and not page.words:
            yield _page(page, "No page links to this one.", "Link to it where it is needed.")
    for tool in manual.tools.values():
        if not _is_used(tool, "tool", used):
            mend = f"Add {tool.id} to the tools of the procedure that takes it, or drop the page."
            yield _page(tool, "No procedure fetches this tool.", mend)
    for hazard in manual.hazards.values():
        when = hazard.required_when
        waits = (*when.tools, *when.areas, *when.fluids, *when.words)
        if not waits and not _is_used(hazard, "hazard", used):
            wrong = "No procedure gives this caution, and nothing asks for it."
            mend = f"Add {hazard.id} to cautions where it belongs, or say required_when."
            yield _page(hazard, wrong, mend)


def _is_used(page: Page, scheme: str, used: _Used) -> bool:
    known = (scheme, page.id) in used.things or page.file in used.files
    return known or scheme in used.lost


def _page(page: Page, wrong: str, mend: str) -> Finding:
    return Finding(CODE, SEVERITY, page.title.at, quote(page.title.written), wrong, mend)


def _owned(manual: Manual, used: _Used) -> Iterator[Finding]:
    """Fasteners and parts of the families. A procedure's own fasteners stand on its page."""
    for family in manual.families.values():
        named = {
            "torque": {name: each.name for name, each in family.fasteners.items()},
            "part": {name: each.name for name, each in family.parts.items()},
        }
        for scheme, things in named.items():
            for name, said in things.items():
                if scheme not in used.lost and (scheme, f"{family.id}/{name}") not in used.things:
                    wrong = f"No procedure names the {scheme} {name}."
                    mend = f"Add {name} to the {scheme}s of the procedure that needs it."
                    yield Finding(CODE, SEVERITY, said.at, quote(said.written), wrong, mend)


def _drawings(manual: Manual, used: _Used) -> Iterator[Finding]:
    for file in sorted(manual.files):
        if PurePosixPath(file).suffix.lower() in DRAWINGS and file not in used.files:
            mend = "Show it where it helps by ![what it shows](its path), or drop the file."
            yield Finding(
                CODE, SEVERITY, Place(file, 1, 1), "", "No page shows this drawing.", mend
            )
