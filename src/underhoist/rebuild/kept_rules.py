"""The rules after each change: what they say of a page stands until it or what it names changes."""

from collections.abc import Iterable, Iterator, Mapping
from functools import partial
from itertools import chain

from attrs import frozen

from underhoist import rules
from underhoist.finding import Finding
from underhoist.model import Manual, Page
from underhoist.rebuild.keeper import Keeper, Single


@frozen
class Source:
    """What is said of a page follows from the manual alone."""

    manual: Manual


@frozen
class Ruled:
    """What the rules say of one page."""

    address: str
    """Its file."""
    said: rules.OfPage


class KeptRules:
    """Applies the rules to a manual that is edited, each time to what changed."""

    def __init__(self) -> None:
        """Begin with nothing known."""
        self._keeper = Keeper[Source, Ruled](_makers)
        self._texts: Mapping[str, Page] = {}

    def __call__(self, manual: Manual) -> Iterator[Finding]:
        """Return what the rules find in the manual as it is now."""
        texts = {page.file: page for page in manual.texts()}
        files = texts.keys() | self._texts.keys()
        touched = {file for file in files if texts.get(file) is not self._texts.get(file)}
        self._texts = texts
        for _ in self._keeper.renew(Source(manual), frozenset(touched)):
            pass
        return found(manual, {file: each.said for file, each in self._keeper.things.items()})


def found(manual: Manual, said: Mapping[str, rules.OfPage]) -> Iterator[Finding]:
    """Return every finding; `said` is what the rules of one page say, by the page's file."""
    yield from chain.from_iterable(each.findings for each in said.values())
    yield from rules.across(manual, {file: each.gathered for file, each in said.items()})


def _makers(source: Source) -> Iterator[Single[Source, Ruled]]:
    for page in source.manual.texts():
        yield Single(page.file, partial(_ruled, page))


def _ruled(page: Page, source: Source) -> Iterable[Ruled]:
    return (Ruled(page.file, rules.of_page(source.manual, page)),)
