"""Tooth counts of which no gear set can be put together.

The planets must fill the space between sun and ring, and equally spaced planets mesh only where
the teeth of ring and sun together can be divided by their number; in a Ravigneaux set also those
of the ring less those of the sun that drives through two planets. Where that fails, a count is
wrong, and the ratios with it.

Good:

```yaml title="families/kestrel-3.md"
gear_train:
  type: ravigneaux
  teeth: {input_sun: 30, low_sun: 24, ring: 84, ring_planet: 30, inner_planet: 18, pairs: 3}
ratios: {first: 1.800, second: 1.000, reverse: 1.800}
```

Bad:

```yaml title="families/kestrel-3.md"
gear_train:
  type: ravigneaux
  teeth: {input_sun: 30, low_sun: 25, ring: 82, pairs: 3}
ratios: {}
```
"""

from collections.abc import Iterator

from underhoist import gears
from underhoist.finding import Finding, Severity
from underhoist.model import Manual, UnitFamily
from underhoist.rules._pages import Pages
from underhoist.words import quote

CODE = "teeth-cannot-be-built"
SEVERITY = Severity.STOP
PAGES = Pages((UnitFamily,))


def check_page(manual: Manual, family: UnitFamily) -> Iterator[Finding]:
    """Find gear sets whose planets do not fit or cannot all be put in, each reason on its own."""
    train = family.gear_train
    counts = ", ".join(f"{name}: {count.written}" for name, count in train.teeth.items())
    for fault in gears.faults(train):
        mend = "Count the teeth again, and the planets."
        yield Finding(CODE, SEVERITY, train.type.at, quote(counts), fault, mend)
