"""The drafts of a fault, a tool, a hazard and a page of text."""

from underhoist.model.values import TorqueSpan, TorqueUnit
from underhoist.schema.known import EVERY_FAMILY
from underhoist.start.interview import Drafted, Interview, page_text
from underhoist.start.question import Answer, Offer, id_of
from underhoist.start.yaml_text import line, scalar
from underhoist.words import NOT_WRITTEN


def draft_fault(talk: Interview) -> Drafted:
    """Ask for a complaint, what can be behind it and what is looked at."""
    title, front = talk.head("fault")
    words = "What does the owner say? In the owner's own words."
    front += line("complaint", talk.text("complaint", words), needed=True)
    families = talk.manual.families.values()
    offers = (Offer(EVERY_FAMILY, "every family"), *(Offer(f.id, f.title.value) for f in families))
    family = talk.ask("unit_family", "Which unit family has it?", offers=offers, several=True)
    front += line("unit_family", family, needed=True, many=len(family) > 1)
    words = "What can be behind it, the likeliest first, with commas between?"
    front += _named("causes", talk.ask("causes", words, several=True, new=str), ("likelihood",))
    words = "What do you look at, the cheapest check first, with commas between?"
    checks = talk.ask("checks", words, several=True, new=str)
    front += _named("checks", checks, ("minutes", "access", "rules_out"))
    body = ["## What it looks like", "", NOT_WRITTEN]
    return Drafted(title, talk.usual_folder("fault", "faults"), page_text(front, body))


def draft_tool(talk: Interview) -> Drafted:
    """Ask for a tool; a torque wrench has a range and a scale."""
    title, front = talk.head("tool")
    words = "Is it a torque wrench? Then from what to what, e.g. 30 to 150 lbf*in."
    span = talk.text("torque_range", words, TorqueSpan)
    scale = talk.text("scale", "And which unit is on its scale, e.g. lbf*in?", TorqueUnit)
    front += [*line("torque_range", span, needed=False), *line("scale", scale, needed=bool(span))]
    body = [f"**Good:** {NOT_WRITTEN}"]
    return Drafted(title, talk.usual_folder("tool", "tools"), page_text(front, body))


def draft_hazard(talk: Interview) -> Drafted:
    """Ask for a danger and for what makes its caution a must."""
    title, front = talk.head("hazard")
    signal = talk.ask("signal", "How bad can it be?", offers=SIGNALS)
    front += line("signal", signal, needed=True)
    front += line("harm", talk.text("harm", "What happens, to whom?"), needed=True)
    front += line(
        "avoid", talk.text("avoid", "What must be done so that it does not?"), needed=True
    )
    tools = talk.pages("tools", "Which tools make this caution a must?", "tools")
    areas = sorted({each.area.value for each in talk.manual.procedures.values()})
    offers = tuple(map(Offer, areas))
    area = talk.ask("areas", "Which areas of work?", offers=offers, several=True, new=str)
    words = talk.ask("words", "Which words in a step, such as drain?", several=True, new=str)
    when = [
        f"  {each}"
        for key, answer in (("tools", tools), ("areas", area), ("words", words))
        for each in line(key, answer, needed=False, many=True)
    ]
    front += ["required_when:", *when] if when else []
    return Drafted(title, talk.usual_folder("hazard", "hazards"), page_text(front, []))


SIGNALS = (
    Offer("danger", "kills or maims if it is not avoided"),
    Offer("warning", "can kill or maim"),
    Offer("caution", "can hurt a little"),
    Offer("notice", "damages things, nobody is hurt"),
)
"""The signal words by ISO 3864 and ANSI Z535.6."""


def draft_plain(talk: Interview) -> Drafted:
    """Ask for a page of text."""
    title, front = talk.head("page")
    return Drafted(title, "", page_text(front, [NOT_WRITTEN]))


def _named(key: str, names: Answer, unknown: tuple[str, ...]) -> list[str]:
    """Write things by id with their name, and a mark for each key that nobody can guess."""
    lines = [f"{key}:"]
    for name in names or (NOT_WRITTEN,):
        id_ = id_of(name) or key.removesuffix("s")
        lines += [f"  {id_}:", f"    name: {scalar(name)}"]
        lines += [f"    {each}: {NOT_WRITTEN}" for each in unknown]
    return lines
