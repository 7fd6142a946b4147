"""A fluid that the unit family does not accept.

The wrong fluid changes how the clutches and bands take hold, and may attack the seals. A procedure
uses only the fluid its family was built for and those that supersede it.

Good:

```yaml title="kestrel-3/set-band.md"
fluids: [DX-2]
```

Bad:

```yaml title="kestrel-3/set-band.md"
fluids: [FM-5]
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure, UnitFamily
from underhoist.references import families_of
from underhoist.rules._pages import Pages
from underhoist.words import listing

CODE = "unaccepted-fluid"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Fluids of a procedure that one of its families does not name."""
    for family in families_of(manual, procedure) if procedure.fluids else ():
        takes = (family.fluid.specification, *family.fluid.accepts)
        accepted = [each.value for each in takes]
        for fluid in procedure.fluids:
            if fluid.value not in accepted and not _must_not_mix(family, fluid.value):
                wrong = f"{family.title} takes {listing(accepted, 'or')}."
                mend = "Write one of these, or add a fluid that supersedes them to accepts."
                yield Finding(CODE, SEVERITY, fluid.at, fluid.written, wrong, mend)


def _must_not_mix(family: UnitFamily, fluid: str) -> bool:
    """Whether `fluids-must-not-mix` says more about it."""
    return any(never.value.casefold() == fluid.casefold() for never in family.fluid.never_with)
