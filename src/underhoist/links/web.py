"""The web of links over the whole manual: every use of every thing, and the order of the work."""

from collections.abc import Mapping

from attrs import frozen

from underhoist.links.declared import declared
from underhoist.links.said import words_said
from underhoist.model import Manual, Page, Procedure
from underhoist.place import Placed
from underhoist.references import Target, find, matches

Key = tuple[str, str]
"""Scheme and full id of a thing: ("torque", "kestrel-3/band-seat")."""


Uses = Mapping[str, tuple[Target, ...]]
"""What each page names, by its file, each thing once."""

Says = Mapping[str, tuple[str, ...]]
"""The shop's words that each page says, by its file."""


@frozen
class Links:
    """Who uses what, and which procedure comes before which."""

    uses: Uses
    users: Mapping[Key, tuple[Page, ...]]
    """The pages that use a thing, in the order of the manual; a page that does not is not here."""
    before: Mapping[str, tuple[str, ...]]
    """Procedures that come before, by procedure id, whichever of the two pages said so."""
    follows: Mapping[str, tuple[str, ...]]
    """Procedures that follow, likewise."""
    count: int
    """Links from one page to one other thing."""
    says: Says

    def used_by(self, scheme: str, full_id: str) -> tuple[Page, ...]:
        """Return the pages that use the thing, none where nothing does."""
        return self.users.get((scheme, full_id), ())


def weave(manual: Manual, uses: Uses | None = None, says: Says | None = None) -> Links:
    """Read every declared and written reference of the manual once.

    `uses` and `says` are what `uses_of` and `words_said` give for each page, where that is there
    already.
    """
    if uses is None:
        uses = {page.file: uses_of(manual, page) for page in manual.pages()}
    if says is None:
        says = {page.file: words_said(manual, page) for page in manual.pages()}
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
        says=says,
    )


def uses_of(manual: Manual, page: Page) -> tuple[Target, ...]:
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
    """Work out what comes before and what follows: each statement counts for both procedures.

    A page's own statements come first, in its own order, then what other pages say of it.
    """
    before = {id_: _known(each.before, procedures) for id_, each in procedures.items()}
    follows = {id_: _known(each.after, procedures) for id_, each in procedures.items()}
    said_before = {id_: tuple(ids) for id_, ids in before.items()}
    said_after = {id_: tuple(ids) for id_, ids in follows.items()}
    for id_ in procedures:
        for first in said_before[id_]:
            _add(follows[first], id_)
        for then in said_after[id_]:
            _add(before[then], id_)
    return _frozen(before), _frozen(follows)


def _known(ids: tuple[Placed[str], ...], procedures: Mapping[str, Procedure]) -> list[str]:
    return list(dict.fromkeys(each.value for each in ids if each.value in procedures))


def _add(ids: list[str], id_: str) -> None:
    if id_ not in ids:
        ids.append(id_)


def _frozen(lists: Mapping[str, list[str]]) -> Order:
    return {id_: tuple(ids) for id_, ids in lists.items()}
