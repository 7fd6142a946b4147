"""Which pages a rule looks at, one at a time."""

from attrs import frozen

from underhoist.model import (
    Draft,
    Fault,
    Hazard,
    Manual,
    Page,
    PlainPage,
    Procedure,
    Tool,
    UnitFamily,
)
from underhoist.source import KINDS

_GROUPS: dict[type[Page], str] = {
    UnitFamily: "families", Procedure: "procedures", Fault: "faults", Tool: "tools",
    Hazard: "hazards", PlainPage: "plain",
}  # fmt: skip
"""The manual's group of each kind of page."""


@frozen
class Pages:
    """The kinds of page that a rule is for: those that have their id first, and others if said."""

    kinds: tuple[type[Page], ...]
    drafts: bool = False
    """Also pages of these kinds whose front matter has faults: of them there is the text alone."""
    repeated: bool = False
    """Also pages whose id another page of their kind had first."""

    def take(self, kind: type[Page], *, draft: bool, repeated: bool) -> bool:
        """Whether such a page is looked at; what kind a draft would be may be unknown: `Page`."""
        return (
            issubclass(kind, self.kinds)
            and (self.drafts or not draft)
            and (self.repeated or not repeated)
        )


TEXTS = Pages((Page,), drafts=True, repeated=True)
"""Every page whose text can be read, for rules that look at nothing else."""


def kind_of(page: Page) -> type[Page]:
    """Return the page's kind; for a draft the one that its author wrote, `Page` for an unknown."""
    return KINDS.get(page.kind, Page) if isinstance(page, Draft) else type(page)


def first_of(manual: Manual, page: Page) -> Page:
    """Return the page that had this page's kind and id first: mostly itself."""
    first: Page = getattr(manual, _GROUPS[type(page)])[page.id]
    return first
