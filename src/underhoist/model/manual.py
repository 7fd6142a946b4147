"""The whole manual: every page by kind and id, in the order of their files."""

from collections.abc import Iterator, Mapping

from attrs import field, frozen

from underhoist.model.access import Access
from underhoist.model.family import UnitFamily
from underhoist.model.fault import Fault
from underhoist.model.hazard import Hazard
from underhoist.model.page import Draft, Page, PlainPage
from underhoist.model.procedure import Procedure
from underhoist.model.tool import Tool
from underhoist.model.word import Word


@frozen(kw_only=True)
class Manual:
    """All pages that could be read. Where two pages share an id, the first one stands here."""

    families: Mapping[str, UnitFamily]
    procedures: Mapping[str, Procedure]
    faults: Mapping[str, Fault]
    tools: Mapping[str, Tool]
    hazards: Mapping[str, Hazard]
    plain: Mapping[str, PlainPage]
    repeated: tuple[Page, ...] = ()
    """Pages whose id another page of their kind had first."""
    unread: Mapping[str, str] = field(factory=dict[str, str])
    """File by id of the pages that could not be read: a link to one of them is not called dead."""
    drafts: tuple[Draft, ...] = ()
    """Those of the unread pages whose text can be read."""
    files: frozenset[str] = frozenset()
    """Every file in the manual's folder, relative to it, pages and drawings alike."""

    def pages(self) -> Iterator[Page]:
        """Every page, kind by kind."""
        yield from self.families.values()
        yield from self.procedures.values()
        yield from self.faults.values()
        yield from self.tools.values()
        yield from self.hazards.values()
        yield from self.plain.values()

    @property
    def words(self) -> dict[str, Word]:
        """The shop's words; of two declarations of one word the first."""
        words: dict[str, Word] = {}
        for page in self.plain.values():
            for name, word in page.words.items():
                words.setdefault(name, word)
        return words

    @property
    def access(self) -> dict[str, Access]:
        """How far in checks go; of two declarations of one word the first."""
        found: dict[str, Access] = {}
        for page in self.plain.values():
            for name, access in page.access.items():
                found.setdefault(name, access)
        return found

    def texts(self) -> Iterator[Page]:
        """Every page whose text can be read, for rules that look at nothing else."""
        yield from self.pages()
        yield from self.repeated
        yield from self.drafts
