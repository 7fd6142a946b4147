"""The screw of a fastener, as strong or as soft as it may be."""

from underhoist_calculators.fastener import Screw
from underhoist_calculators.thread import GRADES, thread_named

from underhoist.model import Fastener

STRONGEST = {False: "grade 8", True: "12.9"}
"""The strongest grade in use, of inch and of metric screws."""

SOFTEST = {False: "grade 2", True: "4.8"}


def strongest(fastener: Fastener) -> Screw | None:
    """Give the screw of the stated grade, else of the strongest; None without a known thread."""
    return _screw(fastener, STRONGEST)


def weakest(fastener: Fastener) -> Screw | None:
    """Give the screw of the stated grade, else of the softest; None without a known thread."""
    return _screw(fastener, SOFTEST)


def _screw(fastener: Fastener, otherwise: dict[bool, str]) -> Screw | None:
    thread = thread_named(fastener.thread.value) if fastener.thread else None
    if thread is None:
        return None
    by_name = {grade.name: grade for grade in GRADES if grade.metric is thread.metric}
    stated = by_name.get(fastener.grade.value) if fastener.grade else None
    return Screw(thread=thread, grade=stated or by_name[otherwise[thread.metric]])
