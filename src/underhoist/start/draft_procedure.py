"""The draft of a procedure: what is needed, then a step for all that is known to be done."""

from collections.abc import Iterator
from typing import Literal

from underhoist_calculators.units import (
    Quantity,
    UnitError,
    read_quantity,
    read_span,
    unit_name,
    unit_symbol,
)

from underhoist.model import Fastener, Manual, UnitFamily
from underhoist.model.values import Limits, Minutes, Torque
from underhoist.schema.known import EVERY_FAMILY
from underhoist.start.interview import Drafted, Interview, page_text
from underhoist.start.proposals import required_hazards, wrenches
from underhoist.start.question import Answer, Offer, id_of
from underhoist.start.yaml_text import line, scalar
from underhoist.words import NOT_WRITTEN

FOR_ANY = "any-unit"
"""Folder of the procedures that are for several families."""

_ORDER = {
    "before": "Which procedures come first, where they are done at all?",
    "after": "Which procedures follow?",
    "needs": "Which ones must be done at the same visit, whatever else is done?",
}
_SEVERAL = ", several with commas between"


def draft_procedure(talk: Interview) -> Drafted:
    """Ask what the procedure needs and write it."""
    title, front = talk.head("procedure")
    family = _families(talk)
    front += line("unit_family", family, needed=True, many=len(family) > 1)
    area = _area(talk)
    front += line("area", area, needed=True)
    front += line(
        "minutes", talk.text("minutes", "How many minutes does it take?", Minutes), needed=True
    )
    who = talk.choice("who", "Who may do it?", Literal["apprentice", "senior"])
    front += [*line("who", who, needed=True)]
    front += line("author", talk.text("author", "Your initials?"), needed=False)
    needs, torques = _needs(talk, family, area)
    readings = _readings(talk)
    order: list[str] = []
    for key, words in _ORDER.items():
        order += line(key, talk.pages(key, words, "procedures"), needed=False, many=True)
    front += [*needs, *_reading_lines(readings), *order]
    has_parts = any(each.startswith("parts:") for each in needs)
    body = _steps(torques, readings, check_first=has_parts or bool(readings))
    return Drafted(title, _folder(talk.manual, family), page_text(front, body))


def _families(talk: Interview) -> Answer:
    families = talk.manual.families.values()
    offers = (Offer(EVERY_FAMILY, "every family"), *(Offer(f.id, f.title.value) for f in families))
    answer = talk.ask("unit_family", "For which unit family?", offers=offers, several=True)
    return (EVERY_FAMILY,) if EVERY_FAMILY in answer else answer


def _area(talk: Interview) -> Answer:
    areas = sorted({each.area.value for each in talk.manual.procedures.values()})
    return talk.ask(
        "area", "Which part of the work is it?", offers=tuple(map(Offer, areas)), new=str
    )


def _needs(talk: Interview, family: Answer, area: Answer) -> tuple[list[str], dict[str, str]]:
    """Ask for all that is fetched; return the lines, and the names of the torques by id."""
    known = _named(talk.manual, family)
    offers = tuple(
        Offer(id_, f"{each.name.value}, {each.torque.written}") for id_, each in known.items()
    )
    torques = talk.ask("torques", "What is tightened?", offers=offers, several=True)
    words = f"What is tightened only in this job? Name: torque{_SEVERAL}, e.g. Plug: 30 lbf*ft."
    own = talk.ask("fasteners", words, several=True, named=True, new=Torque)
    fitting = wrenches(talk.manual, _values(known, torques, own))
    tools = talk.pages(
        "tools",
        "Which tools?",
        "tools",
        proposed=fitting,
        why="They cover the torques." if fitting else "",
    )
    parts = talk.ask(
        "parts", "Which parts are fitted?", offers=_parts(talk.manual, family), several=True
    )
    consumables = talk.ask(
        "consumables", "What is used up? Rags, cleaner, sealant ...", several=True, new=str
    )
    fluids = talk.ask("fluids", "Which fluids?", offers=_fluids(talk.manual, family), several=True)
    must = required_hazards(talk.manual, tools, area, fluids)
    cautions = talk.pages(
        "cautions", "Which cautions besides?", "hazards", fixed=must,
        why="The tools, the area or the fluids ask for them." if must else "",
    )  # fmt: skip
    lines = [
        each
        for key, answer in (
            ("tools", tools), ("parts", parts), ("consumables", consumables),
            ("torques", (*torques, *map(_own_id, own))), ("fluids", fluids), ("cautions", cautions),
        )
        for each in line(key, answer, needed=False, many=True)
    ]  # fmt: skip
    names = {id_: known[id_].name.value for id_ in torques}
    names |= {_own_id(each): each.partition(":")[0] for each in own}
    return [*lines, *_own_fasteners(own)], names


def _families_of(manual: Manual, family: Answer) -> list[UnitFamily]:
    everything = EVERY_FAMILY in family
    return [each for id_, each in manual.families.items() if everything or id_ in family]


def _named(manual: Manual, family: Answer) -> dict[str, Fastener]:
    """Return the families' fasteners, by short id where only one family is meant."""
    families = _families_of(manual, family)
    return {
        (
            name if len(families) == 1 and EVERY_FAMILY not in family else f"{each.id}/{name}"
        ): fastener
        for each in families
        for name, fastener in each.fasteners.items()
    }


def _parts(manual: Manual, family: Answer) -> tuple[Offer, ...]:
    families = _families_of(manual, family)
    short = len(families) == 1 and EVERY_FAMILY not in family
    return tuple(
        Offer(name if short else f"{each.id}/{name}", part.name.value)
        for each in families
        for name, part in each.parts.items()
    )


def _fluids(manual: Manual, family: Answer) -> tuple[Offer, ...]:
    rules = [each.fluid for each in _families_of(manual, family)]
    names = [each.value for rule in rules for each in (rule.specification, *rule.accepts)]
    return tuple(map(Offer, dict.fromkeys(names)))


def _own_id(pair: str) -> str:
    return id_of(pair.partition(":")[0])


def _values(known: dict[str, Fastener], torques: Answer, own: Answer) -> Iterator[Quantity]:
    """Return the torques that are known."""
    yield from (known[each].torque.value for each in torques)
    for pair in own:
        _, colon, value = pair.partition(": ")
        if colon:
            yield read_quantity(value, "torque")


def _own_fasteners(own: Answer) -> Iterator[str]:
    if own:
        yield "fasteners:"
    for pair in own:
        name, _, torque = pair.partition(": ")
        yield f"  {_own_id(pair)}:"
        yield f"    name: {scalar(name)}"
        yield f"    torque: {scalar(torque)}"


def _readings(talk: Interview) -> Answer:
    words = f"What is measured? Name: limits{_SEVERAL}, e.g. Turns to seat: 1 to 2 turns."
    return talk.ask("readings", words, several=True, named=True, new=Limits)


def _reading_lines(readings: Answer) -> Iterator[str]:
    if readings:
        yield "readings:"
    for pair in readings:
        name, _, limits = pair.partition(": ")
        yield f"  {id_of(name)}:"
        yield f"    name: {scalar(name)}"
        yield f"    unit: {scalar(_unit_of(limits))}"
        yield f"    when: {NOT_WRITTEN}"
        yield f"    limits: {scalar(limits)}"


def _unit_of(limits: str) -> str:
    try:
        return unit_symbol(unit_name(read_span(limits).high))
    except UnitError:
        return ""


def _steps(torques: dict[str, str], readings: Answer, *, check_first: bool) -> list[str]:
    """Write the steps that are known to be there, and one for the author to begin with."""
    first = [f"Why: {NOT_WRITTEN}"]
    first += [f"Second check: {NOT_WRITTEN}"] if check_first and not torques else []
    steps = [(NOT_WRITTEN, first)]
    for pair in readings:
        name = pair.partition(":")[0]
        action = f"Measure the {_in_sentence(name)}. [Record it](reading:{id_of(name)})."
        steps.append((action, [f"Good: {NOT_WRITTEN}", f"Bad: {NOT_WRITTEN}"]))
    for id_, name in torques.items():
        action = f"Tighten the {_in_sentence(name)} to <torque:{id_}>."
        steps.append((action, [f"Good: {NOT_WRITTEN}", f"Second check: {NOT_WRITTEN}"]))
    lines = ["## Steps", ""]
    for number, (action, paragraphs) in enumerate(steps, 1):
        lines += [f"{number}. {action}", ""]
        lines += [each for text in paragraphs for each in (f"    {text}", "")]
    return lines


def _folder(manual: Manual, family: Answer) -> str:
    return family[0] if len(family) == 1 and family[0] in manual.families else FOR_ANY


def _in_sentence(name: str) -> str:
    """Begin with a small letter, unless the first word is written in capitals."""
    return name if name[1:2].isupper() or name[1:2] == "-" else f"{name[:1].lower()}{name[1:]}"
