"""A step as the rules look at it: its cautions, its action and what opens its other paragraphs."""

import re
from bisect import bisect_right
from collections.abc import Iterator
from functools import lru_cache

from attrs import frozen

from underhoist.model import Body, Procedure
from underhoist.prose import StepText, prose
from underhoist.references import Reference, find

CAUTION = re.compile(r"<hazard:[^\s<>]+>|\[[^\]\n]*\]\(hazard:[^\s()]+\)")
"""A paragraph that is only a caution."""

_ASKED = "Second check:"


@frozen
class Action:
    """What one step does."""

    number: int
    text: str
    offset: int
    """Where the action's text begins in the body."""
    torques: frozenset[str]
    """Ids of the torques that the step names, without their family."""
    has_second_check: bool
    """Whether a second pair of eyes is asked for, in so many words or by a torque."""


def actions(procedure: Procedure) -> tuple[Action, ...]:
    """Give every step of the procedure, in order."""
    return _actions(procedure.body, procedure.file)


@lru_cache(maxsize=4096)
def _actions(body: Body, file: str) -> tuple[Action, ...]:
    steps = prose(body).steps
    torques = _torques_of(steps, find(body, file))
    return tuple(map(_action, steps, torques))


def _torques_of(
    steps: tuple[StepText, ...], references: Iterator[Reference]
) -> tuple[frozenset[str], ...]:
    """Give for each step the torques that it names."""
    starts = [step.start for step in steps]
    named: list[set[str]] = [set() for _ in steps]
    for each in references:
        at = bisect_right(starts, each.offset) - 1
        if each.scheme == "torque" and at >= 0 and each.offset < steps[at].end:
            named[at].add(each.id.rpartition("/")[2])
    return tuple(map(frozenset, named))


def _action(step: StepText, named: frozenset[str]) -> Action:
    paragraphs = (each for each in step.paragraphs() if not CAUTION.fullmatch(each[1]))
    offset, action = next(paragraphs, (step.start, ""))
    asked = action.startswith(_ASKED) or (
        _ASKED in step.text and any(words.startswith(_ASKED) for _, words in paragraphs)
    )
    return Action(
        number=step.number,
        text=action,
        offset=offset,
        torques=named,
        has_second_check=asked or bool(named),
    )
