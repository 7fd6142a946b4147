"""A step as the rules look at it: its cautions, its action and what opens its other paragraphs."""

import re
from collections.abc import Iterator

from attrs import frozen

from underhoist.model import Procedure
from underhoist.place import Place
from underhoist.prose import StepText, prose
from underhoist.references import find

CAUTION = re.compile(r"<hazard:[^\s<>]+>|\[[^\]\n]*\]\(hazard:[^\s()]+\)")
"""A paragraph that is only a caution."""


@frozen
class Action:
    """What one step does."""

    number: int
    text: str
    at: Place
    torques: frozenset[str]
    """Ids of the torques that the step names, without their family."""
    readings: frozenset[str]
    has_second_check: bool
    """Whether a second pair of eyes is asked for, in so many words or by a torque."""


def actions(procedure: Procedure) -> Iterator[Action]:
    """Every step of the procedure, in order."""
    text = prose(procedure.body)
    for step in text.steps:
        paragraphs = [each for each in step.paragraphs() if not CAUTION.fullmatch(each[1])]
        offset, action = paragraphs[0] if paragraphs else (step.start, "")
        torques, readings = (_named(procedure, step, scheme) for scheme in ("torque", "reading"))
        asked = any(words.startswith("Second check:") for _, words in paragraphs)
        at = text.place(offset, procedure.file)
        yield Action(step.number, action, at, torques, readings, asked or bool(torques))


def _named(procedure: Procedure, step: StepText, scheme: str) -> frozenset[str]:
    return frozenset(
        each.id.rpartition("/")[2]
        for each in find(procedure.body, procedure.file)
        if each.scheme == scheme and step.start <= each.offset < step.end
    )
