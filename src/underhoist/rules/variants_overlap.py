"""Look-alike parts that one measurement fits both of.

Look-alikes are told apart by measuring. Where every size that two of them share overlaps, a part
in the hand can match both, and the wrong one is fitted.

Good:

```yaml title="families/kestrel-3.md"
parts:
  rear-seal:
    name: Rear seal
    variants:
      - {name: Narrow, tell: Black lip, measures: {outside diameter: 52.0 to 52.2 mm}}
      - {name: Wide, tell: Red lip, measures: {outside diameter: 54.0 to 54.2 mm}}
```

Bad:

```yaml title="families/kestrel-3.md"
parts:
  rear-seal:
    name: Rear seal
    variants:
      - {name: Narrow, tell: Black lip, measures: {outside diameter: 52.0 to 52.2 mm}}
      - {name: Wide, tell: Red lip, measures: {outside diameter: 52.1 to 54.2 mm}}
```
"""

from collections.abc import Iterator
from itertools import combinations

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, UnitFamily, Variant
from underhoist.rules._pages import Pages

CODE = "variants-overlap"
SEVERITY = Severity.STOP
PAGES = Pages((UnitFamily,))


def check_page(manual: Manual, family: UnitFamily) -> Iterator[Finding]:
    """Find variants of a part whose shared measures all overlap."""
    for part in family.parts.values():
        for first, second in combinations(part.variants, 2):
            shared = [name for name in second.measures if name in first.measures]
            if shared and all(_overlap(first, second, name) for name in shared):
                yield _finding(first, second, shared[0])


def _overlap(first: Variant, second: Variant, name: str) -> bool:
    one, other = first.measures[name].value, second.measures[name].value
    return one.low <= other.high and other.low <= one.high


def _finding(first: Variant, second: Variant, name: str) -> Finding:
    here, there = second.measures[name], first.measures[name]
    wrong = (
        f"A part of this {name} can also be {first.name}: {there.written}, line {there.at.line}."
    )
    mend = "Add a measure that tells the two apart, or mend the one that overlaps."
    return Finding(CODE, SEVERITY, here.at, here.written, wrong, mend)
