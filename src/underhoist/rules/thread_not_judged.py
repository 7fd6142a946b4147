"""A thread that the check does not know.

Thread and torque together show a slip between units. A thread that is written in no usual way, or
with a grade of the other system, cannot be judged, and a torque twelve times too high goes
unnoticed. Where the thread is truly of another sort, `limited_by` says what decides its torque.

Good:

```yaml title="kestrel-3/set-band.md"
fasteners:
  cover-bolts: {name: Cover bolts, torque: 12 N*m, thread: M8 x 1.25, grade: 8.8}
```

Bad:

```yaml title="kestrel-3/set-band.md"
fasteners:
  cover-bolts: {name: Cover bolts, torque: 12 N*m, thread: M8 x 1.35}
```
"""

from collections.abc import Iterator

from underhoist_calculators.thread import GRADES, THREADS, thread_named

from underhoist.finding import Finding, Severity
from underhoist.model import Fastener, Manual, Procedure, UnitFamily
from underhoist.rules._pages import Pages
from underhoist.words import listing, meant

CODE = "thread-not-judged"
SEVERITY = Severity.LOOK
PAGES = Pages((UnitFamily, Procedure))


def check_page(manual: Manual, page: UnitFamily | Procedure) -> Iterator[Finding]:
    """Find fasteners whose thread or grade tells nothing."""
    for fastener in page.fasteners.values():
        if fastener.thread is not None and fastener.limited_by is None:
            yield from _unknown(fastener)


def _unknown(fastener: Fastener) -> Iterator[Finding]:
    written = fastener.thread
    if written is None:
        return
    thread = thread_named(written.value)
    if thread is None:
        wrong = "This is no thread known here, so nobody can tell a slip of its torque's unit."
        otherwise = "Write it as 5/16-18 UNC or M8 x 1.25, or say under limited_by what decides."
        mend = meant(written.value, [each.name for each in THREADS], otherwise)
        yield Finding(CODE, SEVERITY, written.at, written.written, wrong, mend)
    elif (grade := fastener.grade) is not None:
        fitting = [each.name for each in GRADES if each.metric is thread.metric]
        if grade.value not in fitting:
            wrong = f"{grade} is no strength of {thread.name} screws."
            mend = f"Write {listing(fitting, 'or')}."
            yield Finding(CODE, SEVERITY, grade.at, grade.written, wrong, mend)
