"""A reading or an answer that cannot settle the check it stands under.

Under `readings` of a check stand readings of the procedures that tell how it is made: inside the
limits the check is good, outside it is bad. Under `calculators` stand the answers of a calculator
that make it good or bad. A job card takes both over by itself, so a name that is nowhere would
never settle anything, and nobody would notice.

Good:

```yaml title="faults/late-shifts.md"
checks:
  drive:
    name: Drive it
    minutes: 20
    access: road test
    rules_out: [worn-band]
    calculators: {shift-check: {bad: [one-shift], good: [as-specified]}}
```

Bad:

```yaml title="faults/late-shifts.md"
checks:
  drive:
    name: Drive it
    minutes: 20
    access: road test
    rules_out: [worn-band]
    calculators: {shift-check: {bad: [one-shifts], good: [as-specified]}}
```
"""

from collections.abc import Iterator
from functools import cache

from underhoist_calculators import all_calculators
from underhoist_calculators.declare import Calculator

from underhoist.finding import Finding, Severity
from underhoist.model import Answers, Check, Fault, Manual
from underhoist.place import Placed
from underhoist.rules._edits import retyped
from underhoist.rules._pages import Pages
from underhoist.words import listing, meant, quote, sure

CODE = "settles-no-check"
SEVERITY = Severity.STOP
PAGES = Pages((Fault,))


def check_page(manual: Manual, fault: Fault) -> Iterator[Finding]:
    """Find readings, calculators and answers that are not there or say two things."""
    for each in fault.checks.values():
        yield from _readings(manual, each)
        for name, answers in each.calculators.items():
            yield from _calculator(each, name, answers)


def _readings(manual: Manual, check_: Check) -> Iterator[Finding]:
    pages = [manual.procedures.get(id_.value) for id_ in check_.procedure]
    if None in pages:
        return
    taken = {id_: each for page in pages if page for id_, each in page.readings.items()}
    for reading in check_.readings:
        if reading.value not in taken:
            wrong = f"No procedure of this check takes the reading {quote(reading.value)}."
            offer = f"They take {listing(taken)}." if taken else "None of its procedures takes any."
            yield _found(
                reading, wrong, meant(reading.value, taken, offer), sure(reading.value, taken)
            )
        elif taken[reading.value].limits is None:
            wrong = f"The reading {reading.value} has no limits, so it settles nothing."
            yield _found(reading, wrong, "Give it limits, or take it out here.")


def _calculator(check_: Check, name: str, answers: Answers) -> Iterator[Finding]:
    known = _calculators()
    words = [*answers.bad, *answers.good]
    if name not in known:
        at = words[0].at if words else check_.name.at
        wrong = f"No calculator {quote(name)} names a pattern."
        mend = meant(name, known, f"Those that do are {listing(known)}.")
        yield Finding(CODE, SEVERITY, at, quote(name), wrong, mend)
        return
    if not words:
        wrong = f"No answer of {name} is written, so it settles nothing."
        mend = "Write under bad or good which answers settle the check."
        yield Finding(CODE, SEVERITY, check_.name.at, quote(check_.name.written), wrong, mend)
    patterns = known[name].patterns
    for each in words:
        if each.value not in patterns:
            wrong = f"{name} never answers {quote(each.value)}."
            mend = meant(each.value, patterns, f"It answers {listing(patterns, 'or')}.")
            yield _found(each, wrong, mend, sure(each.value, patterns))
    bad = {each.value for each in answers.bad}
    for each in answers.good:
        if each.value in bad:
            wrong = f"The answer {each.value} makes this check both bad and good."
            yield _found(each, wrong, "Keep it in one of the two places.")


def _found(placed: Placed[str], wrong: str, mend: str, near: str | None = None) -> Finding:
    edit = retyped(placed, near) if near else None
    return Finding(CODE, SEVERITY, placed.at, quote(placed.written), wrong, mend, edit)


@cache
def _calculators() -> dict[str, Calculator]:
    """Give the calculators whose answer is one of several patterns."""
    return {each.name: each for each in all_calculators() if each.patterns}
