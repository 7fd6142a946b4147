"""A step as the rules look at it: its cautions, its action and what opens its other paragraphs."""

import re
from functools import lru_cache

from attrs import frozen

from underhoist.model import Body, Procedure
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
    offset: int
    """Where the action's text begins in the body."""
    at: Place
    torques: frozenset[str]
    """Ids of the torques that the step names, without their family."""
    has_second_check: bool
    """Whether a second pair of eyes is asked for, in so many words or by a torque."""


def actions(procedure: Procedure) -> tuple[Action, ...]:
    """Give every step of the procedure, in order."""
    return _actions(procedure.body, procedure.file)


@lru_cache(maxsize=4096)
def _actions(body: Body, file: str) -> tuple[Action, ...]:
    return tuple(_action(body, file, step) for step in prose(body).steps)


def _action(body: Body, file: str, step: StepText) -> Action:
    paragraphs = [each for each in step.paragraphs() if not CAUTION.fullmatch(each[1])]
    offset, action = paragraphs[0] if paragraphs else (step.start, "")
    torques = frozenset(
        each.id.rpartition("/")[2]
        for each in find(body, file)
        if each.scheme == "torque" and step.start <= each.offset < step.end
    )
    asked = any(words.startswith("Second check:") for _, words in paragraphs)
    return Action(
        number=step.number,
        text=action,
        offset=offset,
        at=prose(body).place(offset, file),
        torques=torques,
        has_second_check=asked or bool(torques),
    )
