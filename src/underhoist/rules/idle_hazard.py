"""A hazard that waits for an area nobody works in.

A hazard's page can demand its caution for an area of work. If the area is spelt otherwise than in
the procedures, the demand never comes true and the caution is missed without a word.

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
from underhoist.words import nearest

CODE = "idle-hazard"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Find areas of hazards that no procedure has, where one has nearly the same."""
    areas = {procedure.area.value.casefold() for procedure in manual.procedures.values()}
    for hazard in manual.hazards.values():
        for area in hazard.required_when.areas:
            near = nearest(area.value, sorted(areas))
            if area.value.casefold() not in areas and near:
                wrong = f"No procedure works in the area {area.value}."
                yield Finding(CODE, SEVERITY, area.at, area.written, wrong, f"Did you mean {near}?")
