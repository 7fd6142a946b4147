"""`kind: fault`: a complaint in the owner's words, its causes and the checks that find them."""

from collections.abc import Mapping

from attrs import field, frozen

from underhoist.model.page import Page
from underhoist.model.values import (
    CalculatorName,
    HowOften,
    Id,
    Likelihood,
    Minutes,
    PatternName,
    ReadingName,
)
from underhoist.place import Placed


@frozen(kw_only=True)
class Cause:
    """Something that can be behind the complaint."""

    name: Placed[str] = field(metadata={"help": "What is wrong."})
    likelihood: Placed[Likelihood] = field(metadata={"help": "Rough share of cases, e.g. 40 %."})
    """From 0 to 1."""
    procedures: tuple[Placed[Id], ...] = field(
        default=(), metadata={"help": "Ids of the procedures that mend it.", "to": "procedure"}
    )
    mend_minutes: Placed[Minutes] | None = field(
        default=None, metadata={"help": "How long it takes to mend, in minutes."}
    )
    unit_family: tuple[Placed[Id], ...] = field(
        default=(),
        metadata={"help": "Families that have it, where not all of the page do.", "to": "family"},
    )


@frozen(kw_only=True)
class Answers:
    """Which answers of a calculator settle a check: words that the calculator declares."""

    bad: tuple[Placed[PatternName], ...] = field(
        default=(), metadata={"help": "Answers that make the check bad, e.g. cable-tight."}
    )
    good: tuple[Placed[PatternName], ...] = field(
        default=(), metadata={"help": "Answers that make it good, e.g. as-specified."}
    )


@frozen(kw_only=True)
class Check:
    """Something the shop looks at, and what its result tells about the causes."""

    name: Placed[str] = field(metadata={"help": "What is looked at."})
    minutes: Placed[Minutes] = field(metadata={"help": "How long it takes, in minutes."})
    access: Placed[str] = field(metadata={"help": "e.g. level ground, on the hoist, pan off."})
    procedure: tuple[Placed[Id], ...] = field(
        default=(),
        metadata={
            "help": "Id of the procedure that tells how, or a list: one for each unit family.",
            "to": "procedure",
        },
    )
    rules_out: tuple[Placed[Id], ...] = field(
        default=(), metadata={"help": "Ids of the causes a good result rules out.", "to": "cause"}
    )
    bad_with: Mapping[Id, Placed[HowOften]] = field(
        factory=dict[str, Placed[float]],
        metadata={"help": "How often it is bad with a cause that it does not always tell."},
    )
    readings: tuple[Placed[ReadingName], ...] = field(
        default=(),
        metadata={"help": "Readings of its procedures: inside the limits good, outside bad."},
    )
    calculators: Mapping[CalculatorName, Answers] = field(
        factory=dict[str, Answers],
        metadata={"help": "Calculators whose answer settles it, each with bad and good answers."},
    )
    unit_family: tuple[Placed[Id], ...] = field(
        default=(),
        metadata={
            "help": "Families it is made on, where neither the page nor its procedures tell.",
            "to": "family",
        },
    )


@frozen(kw_only=True)
class Fault(Page):
    """A complaint."""

    complaint: Placed[str] = field(metadata={"help": "What the owner says."})
    unit_family: tuple[Placed[Id], ...] = field(
        metadata={"help": "Family id, a list, or any.", "to": "family"}
    )
    causes: Mapping[Id, Cause] = field(metadata={"help": "Causes by id."})
    checks: Mapping[Id, Check] = field(metadata={"help": "Checks by id."})
