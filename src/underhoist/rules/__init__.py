"""The rules: one file each, whose docstring is its page. A new file here is a new rule.

A rule's file has `CODE`, `SEVERITY` and, unless the reading of the source itself raises the code,
`check(manual)`. The docstring's first line is the title; blocks under `Good:` and `Bad:` are laid
over a small manual by the tests: YAML in place of the page's keys of the same names, Markdown in
place of its body, or the whole page where it begins with dashes.
"""

from collections.abc import Callable, Iterator
from importlib import import_module
from inspect import cleandoc
from pkgutil import iter_modules

from attrs import frozen

from underhoist.finding import Finding, Severity
from underhoist.model import Manual

type Check = Callable[[Manual], Iterator[Finding]]


@frozen
class Rule:
    """A rule. `check` is None where the code comes from reading the source."""

    code: str
    severity: Severity
    page: str
    check: Check | None

    @property
    def title(self) -> str:
        """The first line of the page, without its full stop."""
        return self.page.partition("\n")[0].rstrip(".")


def _rule(name: str) -> Rule:
    module = import_module(f"{__name__}.{name}")
    page = cleandoc(module.__doc__ or "")
    return Rule(module.CODE, module.SEVERITY, page, getattr(module, "check", None))


def _all_rules() -> tuple[Rule, ...]:
    names = (module.name for module in iter_modules(__path__) if not module.name.startswith("_"))
    return tuple(sorted(map(_rule, names), key=lambda rule: rule.code))


ALL: tuple[Rule, ...] = _all_rules()
"""Every rule, by its code."""


def run(manual: Manual) -> tuple[Finding, ...]:
    """Apply every rule to the manual."""
    return tuple(found for rule in ALL if rule.check for found in rule.check(manual))
