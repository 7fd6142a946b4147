"""The web of links over the whole manual: every use of every thing, and the order of the work."""

from collections.abc import Iterator, Mapping

from attrs import frozen

from underhoist.links.declared import declared
from underhoist.model import Manual, Page, Procedure
from underhoist.references import Target, find, matches

Key = tuple[str, str]
"""Scheme and full id of a thing: ("torque", "kestrel-3/band-seat")."""


@frozen
class Links:
    """Who uses what, and which procedure comes before which."""

    uses: Mapping[str, tuple[Target, ...]]
    """What a page names, by its file, each thing once."""
    users: Mapping[Key, tuple[Page, ...]]
    """The pages that use a thing, in the order of the manual; a page that does not is not here."""
    before: Mapping[str, tuple[str, ...]]
    """Procedures that come before, by procedure id, whichever of the two pages said so."""
    follows: Mapping[str, tuple[str, ...]]
    """Procedures that follow, likewise."""
    count: int
    """Links from one page to one other thing."""

    def used_by(self, scheme: str, full_id: str) -> tuple[Page, ...]:
        """Return the pages that use the thing, none where nothing does."""
        return self.users.get((scheme, full_id), ())


def weave(manual: Manual) -> Links:
    """Read every declared and written reference of the manual once."""
    uses = {page.file: _uses(manual, page) for page in manual.pages()}
    users: dict[Key, list[Page]] = {}
    for page in manual.pages():
        for target in uses[page.file]:
            users.setdefault((target.scheme, target.id), []).append(page)
    before, follows = _order(manual.procedures)
    return Links(
        uses=uses,
        users={key: tuple(pages) for key, pages in users.items()},
        before=before,
        follows=follows,
        count=sum(map(len, uses.values())),
    )


def _uses(manual: Manual, page: Page) -> tuple[Target, ...]:
    """Everything that a page names, in its front matter and in its text, itself left out."""
    named = [(scheme, value.value) for scheme, value in declared(page)]
    named += [(reference.scheme, reference.id) for reference in find(page.body, page.file)]
    found: dict[Key, Target] = {}
    for scheme, id_ in dict.fromkeys(named):
        targets = matches(manual, page, scheme, id_)
        if len(targets) == 1 and not _is_own(targets[0], page):
            found[targets[0].scheme, targets[0].id] = targets[0]
    return tuple(found.values())


def _is_own(target: Target, page: Page) -> bool:
    """Say whether the thing is the page itself or one of its readings."""
    reading = target.scheme == "reading" and target.id.startswith(f"{page.id}/")
    return reading or target.thing is page


Order = Mapping[str, tuple[str, ...]]


def _order(procedures: Mapping[str, Procedure]) -> tuple[Order, Order]:
    """Work out what comes before and what follows: each statement counts for both procedures."""
    before: dict[str, list[str]] = {id_: [] for id_ in procedures}
    follows: dict[str, list[str]] = {id_: [] for id_ in procedures}
    for first, then in dict.fromkeys(_pairs(procedures)):
        if first in procedures and then in procedures:
            before[then].append(first)
            follows[first].append(then)
    return _frozen(before), _frozen(follows)


def _frozen(lists: Mapping[str, list[str]]) -> Order:
    return {id_: tuple(ids) for id_, ids in lists.items()}


def _pairs(procedures: Mapping[str, Procedure]) -> Iterator[tuple[str, str]]:
    """(first, then) of every before and after, each page's own statements in its own order."""
    for id_, procedure in procedures.items():
        yield from ((first.value, id_) for first in procedure.before)
        yield from ((id_, then.value) for then in procedure.after)
