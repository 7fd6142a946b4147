"""A hazard that waits for an area nobody works in, or a fluid that nobody handles.

A hazard's page can demand its caution for an area of work or a fluid. If it is spelt otherwise than
in the procedures, the demand never comes true and the caution is missed without a word.

Good:

```yaml title="hazards/hot-fluid.md"
required_when: {areas: [fluid]}
```

```yaml title="any-unit/leak-check.md"
cautions: [hot-fluid]
```

Bad:

```yaml title="hazards/hot-fluid.md"
required_when: {areas: [fluids]}
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual
from underhoist.place import Placed
from underhoist.words import nearest

CODE = "idle-hazard"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Find areas and fluids of hazards that no page has, where one has nearly the same."""
    areas = {procedure.area.value.casefold() for procedure in manual.procedures.values()}
    fluids = {each.value.casefold(): each.value for each in _fluids(manual)}
    for hazard in manual.hazards.values():
        when = hazard.required_when
        for area in when.areas:
            near = nearest(area.value, sorted(areas))
            if area.value.casefold() not in areas and near:
                yield _finding(area, f"No procedure works in the area {area.value}.", near)
        for fluid in when.fluids:
            near = nearest(fluid.value, sorted(fluids.values()))
            if fluid.value.casefold() not in fluids and near:
                yield _finding(fluid, f"No page names the fluid {fluid.value}.", near)


def _fluids(manual: Manual) -> Iterator[Placed[str]]:
    """Every fluid that a family or a procedure names."""
    for family in manual.families.values():
        rule = family.fluid
        yield from (rule.specification, *rule.accepts, *rule.never_with)
    for procedure in manual.procedures.values():
        yield from procedure.fluids


def _finding(asked: Placed[str], wrong: str, near: str) -> Finding:
    return Finding(CODE, SEVERITY, asked.at, asked.written, wrong, f"Did you mean {near}?")
