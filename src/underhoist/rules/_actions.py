"""A step as the rules look at it: its cautions, its action and what opens its other paragraphs."""

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

from attrs import frozen

from underhoist.model import Body, Procedure
from underhoist.place import Place
from underhoist.prose import Prose, StepText, prose
from underhoist.references import Reference, find

CAUTION = re.compile(r"<hazard:[^\s<>]+>|\[[^\]\n]*\]\(hazard:[^\s()]+\)")
"""A paragraph that is only a caution."""


@frozen
class Action:
    """What one step does."""

    number: int
    text: str
    offset: int
    """Where the action's text begins in the body."""
    at: Place
    torques: frozenset[str]
    """Ids of the torques that the step names, without their family."""
    readings: frozenset[str]
    has_second_check: bool
    """Whether a second pair of eyes is asked for, in so many words or by a torque."""


def actions(procedure: Procedure) -> Iterator[Action]:
    """Every step of the procedure, in order."""
    return iter(_actions(procedure.body, procedure.file))


@lru_cache(maxsize=4096)
def _actions(body: Body, file: str) -> tuple[Action, ...]:
    """Look at the steps once for all rules, and again only after a change."""
    text = prose(body)
    references = tuple(find(body, file))
    return tuple(_action(step, text, references, file) for step in text.steps)


def _action(step: StepText, text: Prose, references: Iterable[Reference], file: str) -> Action:
    named = [each for each in references if step.start <= each.offset < step.end]
    paragraphs = [each for each in step.paragraphs() if not CAUTION.fullmatch(each[1])]
    offset, action = paragraphs[0] if paragraphs else (step.start, "")
    torques, readings = (_ids(named, scheme) for scheme in ("torque", "reading"))
    asked = any(words.startswith("Second check:") for _, words in paragraphs)
    at = text.place(offset, file)
    return Action(step.number, action, offset, at, torques, readings, asked or bool(torques))


def _ids(named: Iterable[Reference], scheme: str) -> frozenset[str]:
    return frozenset(each.id.rpartition("/")[2] for each in named if each.scheme == scheme)
