"""A page's portrait: all that it says and shows, as plain data. Its hash is the page's revision.

Whatever changes the portrait changes the revision and is told in words, so neither can happen
without the other.
"""

import hashlib
import json
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from attrs import frozen
from underhoist_calculators.declare import Calculator

from underhoist.history.plain import Plain, facts, plain
from underhoist.history.texts import texts
from underhoist.link_targets import Inside, file_links
from underhoist.links import Links
from underhoist.model import (
    Fastener,
    Fault,
    Hazard,
    Manual,
    Page,
    Part,
    Procedure,
    Tool,
    whole_minutes,
)
from underhoist.references import OWNED, Target, find, matches

Filled = Callable[[Page, Calculator], Mapping[str, str]]
"""What a calculator opened from a page is filled in with."""

Portrait = dict[str, Plain]

REVISION = 10
"""Hexadecimal digits of a revision."""


@frozen
class Painter:
    """Makes the portraits of a manual's pages."""

    manual: Manual
    links: Links
    folder: Path
    filled: Filled

    def portrait(self, page: Page) -> Portrait:
        """Paint one page: its facts, its steps and text, and what it shows from elsewhere."""
        body, told = texts(page.body), facts(page)
        left_out = ("before", "after") if isinstance(page, Procedure) else ()
        parts: Portrait = {
            "facts": {name: value for name, value in told.items() if name not in left_out},
            "order": self._order(page) if isinstance(page, Procedure) else {},
            "steps": body.steps,
            "text": body.sections,
            "shows": dict(self._shows(page)),
            "names": dict(self._names(page, told)),
        }
        return {name: part for name, part in parts.items() if part}

    def _order(self, page: Procedure) -> dict[str, Plain]:
        """Give what comes before and what follows, whichever page said so."""
        sides = {"before": self.links.before, "after": self.links.follows}
        return {
            side: [f"procedure:{id_}" for id_ in lists[page.id]]
            for side, lists in sides.items()
            if lists.get(page.id)
        }

    def _shows(self, page: Page) -> Iterator[tuple[str, Plain]]:
        for target in self.links.uses[page.file]:
            shown = None if _owns(page, target) else self._shown(page, target)
            if shown:
                yield f"{target.scheme}:{target.id}", shown
        if isinstance(page, Fault):
            yield from self._ways(page)
        for link, to in file_links(page):
            if link.form == "image" and isinstance(to, Inside) and to.path in self.manual.files:
                yield f"drawing:{to.path}", {"content": self._content(to.path)}

    def _ways(self, fault: Fault) -> Iterator[tuple[str, Plain]]:
        """Give the minutes to get at each check: the order of the checks comes from them."""
        declared = self.manual.access
        for word in dict.fromkeys(check.access.value for check in fault.checks.values()):
            if word in declared:
                yield f"access:{word}", {"minutes": str(whole_minutes(declared, word))}

    def _shown(self, page: Page, target: Target) -> dict[str, Plain]:
        """Give what the page shows of a thing that stands elsewhere, besides its name."""
        match target.thing:
            case Fastener() as fastener:
                return {"torque": plain(fastener.torque)}
            case Hazard() as hazard:
                told = {"signal": hazard.signal, "harm": hazard.harm, "avoid": hazard.avoid}
                return {key: plain(value) for key, value in told.items()}
            case Tool() as tool if isinstance(page, Procedure):  # the plates read in its unit
                told = {"torque_range": tool.torque_range, "scale": tool.scale}
                return {key: plain(value) for key, value in told.items() if value is not None}
            case Part() as part if len(part.variants) > 1:
                return {"look-alikes": str(len(part.variants))}
            case Calculator() as calculator:
                return {key: text for key, text in self.filled(page, calculator).items() if text}
            case _:
                return {}

    def _content(self, path: str) -> str:
        file = self.folder / path
        content = file.read_bytes().replace(b"\r\n", b"\n") if file.is_file() else b""
        return hashlib.sha256(content).hexdigest()[:REVISION]

    def _names(self, page: Page, told: Plain) -> Iterator[tuple[str, Plain]]:
        """Give the name of everything that the page names, by how it names it."""
        named = [(each.scheme, each.id) for each in find(page.body, page.file)]
        named += [(scheme, id_) for scheme, id_ in _ids(told)]
        if isinstance(page, Procedure):
            lists = (self.links.before, self.links.follows)
            named += [("procedure", id_) for ids in lists for id_ in ids.get(page.id, ())]
        for scheme, id_ in dict.fromkeys(named):
            found = matches(self.manual, page, scheme, id_)
            if len(found) == 1 and found[0].thing is not page:
                yield f"{scheme}:{id_}", found[0].title


def _owns(page: Page, target: Target) -> bool:
    """Whether the thing stands on the page itself, where its facts say all of it."""
    return target.scheme in OWNED and target.id.startswith(f"{page.id}/")


def _ids(value: Plain) -> Iterator[tuple[str, str]]:
    """Find every id with its scheme in the facts."""
    if isinstance(value, str):
        scheme, colon, id_ = value.partition(":")
        if colon and scheme in _SCHEMES and id_:
            yield scheme, id_
        return
    for each in value.values() if isinstance(value, dict) else value:
        yield from _ids(each)


_SCHEMES = frozenset({"torque", "part", "tool", "hazard", "procedure", "family", "fault"})


def revision(portrait: Portrait) -> str:
    """Ten hexadecimal digits that change whenever the page would read differently."""
    text = json.dumps(portrait, ensure_ascii=False, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()[:REVISION]
