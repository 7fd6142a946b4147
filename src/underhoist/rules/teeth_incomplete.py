"""Tooth counts that a train of this type does not have, or lacks.

The ratios are computed from the tooth counts, so the counts must be those of the train. A Simpson
train has `sun` and `ring`, those of a rear set that differs begin with `rear_`, and those of an
overdrive set with `overdrive_`. A Ravigneaux set has `small_sun` and `large_sun`, or as a two-speed
`input_sun` and `low_sun`, with `ring`. A stated ratio must belong to a gear of the train.

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
  teeth: {input_sun: 30, ring: 84}
ratios: {}
```
"""

from collections.abc import Iterator

from underhoist import gears
from underhoist.finding import Finding, Severity
from underhoist.model import GearTrain, Manual, UnitFamily
from underhoist.rules._pages import Pages
from underhoist.words import listing, meant

CODE = "teeth-incomplete"
SEVERITY = Severity.STOP
PAGES = Pages((UnitFamily,))


def check_page(manual: Manual, family: UnitFamily) -> Iterator[Finding]:
    """Find counts of another train, missing counts, and ratios of gears that the train lacks."""
    yield from _teeth(family.gear_train)
    yield from _gears(family)


def _teeth(train: GearTrain) -> Iterator[Finding]:
    known = gears.known(train)
    strange = [name for name in train.teeth if name not in known]
    for name in strange:
        count = train.teeth[name]
        wrong = f"A {train.type} train has no {name}."
        mend = meant(name, known, f"Its gears are {listing(known)}.")
        yield Finding(CODE, SEVERITY, count.at, f"{name}: {count.written}", wrong, mend)
    if (lacks := gears.missing(train)) and not strange:
        wrong = f"A {train.type} train has no ratios without {listing(lacks)}."
        mend = "Count the teeth and add them, or write another type."
        yield Finding(CODE, SEVERITY, train.type.at, train.type.written, wrong, mend)


def _gears(family: UnitFamily) -> Iterator[Finding]:
    computed = gears.ratios(family.gear_train)
    for gear, stated in family.ratios.items() if computed else ():
        if gear not in computed:
            wrong = f"A {family.gear_train.type} train with these gears has no {gear}."
            mend = meant(gear, computed, f"Its gears are {listing(computed)}.")
            yield Finding(CODE, SEVERITY, stated.at, f"{gear}: {stated.written}", wrong, mend)
