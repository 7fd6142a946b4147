"""A procedure as schema.org HowTo in JSON-LD: data beside the page, for machines that read it.

A browser does not run a block of this type, so a policy against inline scripts leaves it alone.
Addresses count from the page, as those of its links do.
"""

import json
import re
from collections.abc import Iterable
from html import unescape

from underhoist.model import Hazard, Part, Procedure
from underhoist.pages.here import Here
from underhoist.pages.steps import Step

type Thing = dict[str, object]

_IMAGE = re.compile(r'<img\b[^>]*?\bsrc="([^"]+)"')
_UNSAFE = str.maketrans(
    {sign: f"\\u{ord(sign):04x}" for sign in ("<", ">", "&", "\u2028", "\u2029")}
)
"""Signs with which a text could end the block it stands in."""


def howto(
    here: Here, procedure: Procedure, made: tuple[Step, ...], first: Iterable[Hazard], before: str
) -> str:
    """Write the procedure as JSON-LD.

    `first` are its cautions and `before` is the HTML above its steps, both as the page shows them.

    """
    data = _thing(
        "HowTo",
        name=procedure.title.value,
        description=procedure.summary.value,
        inLanguage="en-GB",
        totalTime=duration(procedure.minutes.value),
        image=_images(before),
        tool=[
            _thing("HowToTool", name=each.title.value, url=here.to_page(each))
            for each in here.tools
        ],
        supply=[_thing("HowToSupply", name=name) for name in _supplies(here, procedure)],
        step=[*_cautions(tuple(first)), *map(_step, made)],
    )
    text = json.dumps({"@context": "https://schema.org", **data}, ensure_ascii=False)
    return text.translate(_UNSAFE)


def duration(minutes: int) -> str:
    """Write minutes as a duration of ISO 8601: 90 is PT1H30M."""
    hours, rest = divmod(minutes, 60)
    return f"PT{f'{hours}H' if hours else ''}{f'{rest}M' if rest or not hours else ''}"


def _thing(kind: str, **properties: object) -> Thing:
    """Write one thing of the vocabulary, without its empty properties."""
    return {"@type": kind, **{name: value for name, value in properties.items() if value}}


def _supplies(here: Here, procedure: Procedure) -> list[str]:
    """Name what is used up and what is fitted."""
    parts = (here.target("part", each.value) for each in procedure.parts)
    used = (each.value for each in (*procedure.fluids, *procedure.consumables))
    return [*used, *(each.title for each in parts if each and isinstance(each.thing, Part))]


def _cautions(hazards: tuple[Hazard, ...]) -> list[Thing]:
    """Write the page's cautions as a section that comes before the steps."""
    tips = [_caution(each) for each in hazards]
    return [_thing("HowToSection", name="Cautions", itemListElement=tips)] if tips else []


def _caution(hazard: Hazard) -> Thing:
    said = f"{hazard.signal.value.upper()}. {hazard.harm.value} {hazard.avoid.value}"
    return _thing("HowToTip", text=said)


def _step(step: Step) -> Thing:
    """Write a step; where cautions precede its action, they stand before it."""
    direction = _thing("HowToDirection", text=step.text)
    return _thing(
        "HowToStep",
        position=step.number,
        text=step.text,
        url=f"#step-{step.number}",
        image=_images(step.html),
        itemListElement=[*map(_caution, step.hazards), direction] if step.hazards else None,
    )


def _images(html: str) -> list[str]:
    return [unescape(source) for source in _IMAGE.findall(html)]
