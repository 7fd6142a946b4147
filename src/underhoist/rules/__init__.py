"""The rules: one file each, whose docstring is its page. A new file here is a new rule.

A rule's file has `CODE`, `SEVERITY` and, unless the reading of the source itself raises the code,
one of these:

- `PAGES` and `check_page(manual, page)`: what is wrong follows from one page and from what it
  names in the manual. Never look at another page's text, and look things up by their id rather
  than walk over a whole group: what came out is kept until the page or what was looked up changes.
- `check(manual)`: it compares what the front matter of several pages says.
- `PAGES`, `gather(manual, page)` and `check_gathered(manual, gathered)`: it compares what the texts
  of pages say. The first takes the little from each page that the second needs, None for nothing;
  the second has it by the page's file, in the order of the manual.

The docstring's first line is the title; blocks under `Good:` and `Bad:` are laid over a small
manual by the tests: YAML in place of the page's keys of the same names, Markdown in place of its
body, or the whole page where it begins with dashes.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cache, partial
from importlib import import_module
from inspect import cleandoc
from itertools import chain
from pkgutil import iter_modules
from typing import Any

from attrs import frozen

from underhoist.divided import divided
from underhoist.finding import Finding, Severity
from underhoist.model import Draft, Manual, Page
from underhoist.rules._pages import Pages, first_of, kind_of

type CheckPage = Callable[[Manual, Any], Iterator[Finding]]
type Gather = Callable[[Manual, Any], object]
type Check = Callable[[Manual], Iterator[Finding]]
type CheckGathered = Callable[[Manual, Mapping[str, Any]], Iterator[Finding]]
type Gathered = Mapping[str, object]
"""What was gathered from one page, by the rule's code."""


@frozen
class Rule:
    """A rule. It has no function at all where the code comes from reading the source."""

    code: str
    severity: Severity
    page: str
    pages: Pages | None = None
    check_page: CheckPage | None = None
    gather: Gather | None = None
    check_gathered: CheckGathered | None = None
    check: Check | None = None

    @property
    def title(self) -> str:
        """The first line of the page, without its full stop."""
        return self.page.partition("\n")[0].rstrip(".")


@frozen
class OfPage:
    """What the rules found on one page, and what they took from it to judge all pages by."""

    findings: tuple[Finding, ...]
    gathered: Gathered


_FORMS = ("check_page", "gather", "check_gathered", "check")


def _rule(name: str) -> Rule:
    module = import_module(f"{__name__}.{name}")
    page = cleandoc(module.__doc__ or "")
    given = {name: getattr(module, name, None) for name in _FORMS}
    return Rule(module.CODE, module.SEVERITY, page, getattr(module, "PAGES", None), **given)


def _all_rules() -> tuple[Rule, ...]:
    names = (module.name for module in iter_modules(__path__) if not module.name.startswith("_"))
    return tuple(sorted(map(_rule, names), key=lambda rule: rule.code))


ALL: tuple[Rule, ...] = _all_rules()
"""Every rule, by its code."""


def run(manual: Manual) -> tuple[Finding, ...]:
    """Apply every rule to the manual."""
    made = dict(chain.from_iterable(divided(partial(_of_pages, manual), tuple(manual.texts()))))
    found = (finding for each in made.values() for finding in each.findings)
    gathered = {file: each.gathered for file, each in made.items()}
    return (*found, *across(manual, gathered))


def _of_pages(manual: Manual, pages: Iterable[Page]) -> list[tuple[str, OfPage]]:
    return [(page.file, of_page(manual, page)) for page in pages]


def of_page(manual: Manual, page: Page) -> OfPage:
    """Apply to one of the manual's texts the rules that look at one page at a time."""
    is_draft = isinstance(page, Draft)
    is_repeated = not is_draft and first_of(manual, page).file != page.file
    rules = _rules_for(kind_of(page), draft=is_draft, repeated=is_repeated)
    found = (each for rule in rules if rule.check_page for each in rule.check_page(manual, page))
    gathered = {rule.code: rule.gather(manual, page) for rule in rules if rule.gather}
    return OfPage(tuple(found), {code: each for code, each in gathered.items() if each is not None})


def across(manual: Manual, gathered: Mapping[str, Gathered]) -> tuple[Finding, ...]:
    """Apply the rules that compare pages; `gathered` is what `of_page` took, by the page's file."""
    files = [page.file for page in manual.texts()]
    return tuple(found for rule in ALL for found in _across(rule, manual, files, gathered))


def _across(
    rule: Rule, manual: Manual, files: list[str], gathered: Mapping[str, Gathered]
) -> Iterator[Finding]:
    if rule.check:
        yield from rule.check(manual)
    if rule.check_gathered:
        own = {file: gathered[file][rule.code] for file in files if rule.code in gathered[file]}
        yield from rule.check_gathered(manual, own)


@cache
def _rules_for(kind: type[Page], *, draft: bool, repeated: bool) -> tuple[Rule, ...]:
    """Return the rules that look at such a page."""
    return tuple(
        rule for rule in ALL if rule.pages and rule.pages.take(kind, draft=draft, repeated=repeated)
    )
