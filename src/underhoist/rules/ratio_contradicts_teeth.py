"""A stated ratio that the tooth counts contradict.

The gear train alone decides the ratios. For two equal planetary sets on one sun, with i the ring's
teeth over the sun's, Willis's equation gives 2 + 1/i in first, 1 + 1/i in second, 1 in third and i
in reverse; an overdrive set before it gives its ring over ring and sun in fourth. A Ravigneaux set
is solved in the same way, by its two suns, its ring and its carrier.

Good:

```yaml title="families/kestrel-3.md"
ratios: {first: 2.425, second: 1.425, third: 1.000, reverse: 2.355}
```

Bad:

```yaml title="families/kestrel-3.md"
ratios: {first: 2.525, second: 1.425, third: 1.000, reverse: 2.355}
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.gears import ratios
from underhoist.model import Manual, UnitFamily
from underhoist.rules._pages import Pages

CODE = "ratio-contradicts-teeth"
SEVERITY = Severity.STOP
PAGES = Pages((UnitFamily,))

ROUNDING = 0.0051
"""Half a unit of the second decimal, to which ratios are usually stated."""


def check_page(manual: Manual, family: UnitFamily) -> Iterator[Finding]:
    """Find stated ratios further from the computed ones than rounding explains."""
    computed = ratios(family.gear_train)
    for gear, stated in family.ratios.items():
        if gear not in computed:
            continue
        ratio = float(abs(computed[gear]))  # reverse is stated without its sign
        if abs(stated.value - ratio) > ROUNDING:
            line = family.gear_train.type.at.line
            wrong = f"The tooth counts give {ratio:.3f} in {gear}."
            mend = f"Write {ratio:.3f}, or mend the tooth counts on line {line}."
            yield Finding(CODE, SEVERITY, stated.at, stated.written, wrong, mend)
