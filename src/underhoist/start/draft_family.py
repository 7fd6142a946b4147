"""The draft of a unit family: what is known of it, and a mark for each figure that is not."""

from collections.abc import Iterator
from typing import Literal

from underhoist import gears
from underhoist.model import GearTrain
from underhoist.model.values import Number, TemperatureSpan, Torque, Volume
from underhoist.place import Place, Placed
from underhoist.start.interview import Drafted, Interview, page_text
from underhoist.start.question import Answer, id_of
from underhoist.start.yaml_text import line, scalar
from underhoist.words import NOT_WRITTEN

TRAINS = Literal["simpson", "simpson-overdrive", "ravigneaux"]


def draft_family(talk: Interview) -> Drafted:
    """Ask what is known of the family and write its page."""
    title, front = talk.head("unit-family")
    train = talk.choice("type", "How is its gear set built?", TRAINS)
    front += ["gear_train:", *_in(line("type", train, needed=True)), "  teeth:"]
    front += [f"    {gear}: {NOT_WRITTEN}" for gear in _gears(train)]
    front += ["reference:"]
    front += _in(
        line("tyre", talk.text("tyre", "Which tyre is usual, e.g. 205/70 R 14?"), needed=True)
    )
    front += _in(
        line("axle", talk.text("axle", "Which axle ratio, e.g. 2.92?", Number), needed=True)
    )
    front += ["fluid:", *_in(_fluid(talk))]
    words = "What is tightened? Name: torque, with commas between, e.g. Pan bolts: 9 lbf*ft."
    front += _named("fasteners", talk.ask("fasteners", words, several=True, named=True, new=Torque))
    words = "Which parts are bought for it, several with commas between?"
    front += _named("parts", talk.ask("parts", words, several=True, new=str))
    folder = talk.usual_folder("unit-family", "families")
    return Drafted(title, folder, page_text(front, [NOT_WRITTEN]))


def _in(lines: Iterator[str], depth: int = 2) -> list[str]:
    return [f"{' ' * depth}{each}" for each in lines]


def _gears(train: Answer) -> tuple[str, ...]:
    """Name the counts that this train needs."""
    kind = Placed(train[0] if train else "simpson", Place("", 1, 1), "")
    return gears.missing(GearTrain(type=kind, teeth={}))  # pyright: ignore[reportArgumentType]


def _fluid(talk: Interview) -> Iterator[str]:
    yield from line(
        "specification", talk.text("specification", "Which fluid was it built for?"), needed=True
    )
    words = "How much does a normal service take, e.g. 4.2 L?"
    yield from line("service_fill", talk.text("service_fill", words, Volume), needed=True)
    words = "How much does the empty unit with its converter take, e.g. 8.6 L?"
    yield from line("dry_fill", talk.text("dry_fill", words, Volume), needed=True)
    yield "level:"
    selector = talk.choice(
        "selector", "Where is the selector for reading the level?", Literal["park", "neutral"]
    )
    yield from _in(line("selector", selector, needed=True))
    words = "At which temperature is it read, e.g. 65 to 80 degC?"
    yield from _in(
        line("temperature", talk.text("temperature", words, TemperatureSpan), needed=True)
    )
    words = "How much goes between the two marks of the dipstick, e.g. 0.5 L?"
    yield from _in(line("between_marks", talk.text("between_marks", words, Volume), needed=True))


def _named(key: str, answer: Answer) -> list[str]:
    """Write things by id, each with its name and its torque if it has one."""
    lines = [f"{key}:"] if answer else []
    for pair in answer:
        name, _, torque = pair.partition(": ")
        lines += [f"  {id_of(name)}:", f"    name: {scalar(name)}"]
        lines += [f"    torque: {scalar(torque)}"] if key == "fasteners" else []
    return lines
