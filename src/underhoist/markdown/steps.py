"""The steps of a procedure: one action each, with why, good, bad, mistake, note, second check."""

from collections.abc import Callable, Iterable, Iterator
from xml.etree.ElementTree import Element

from attrs import frozen
from markdown.util import BLOCK_LEVEL_ELEMENTS

from underhoist.markdown.blocks import lone_hazard
from underhoist.markdown.references import REF
from underhoist.prose import STEP_WORDS, listed

Write = Callable[[list[Element]], str]


@frozen
class StepText:
    """One step as read from the page: its HTML in pieces and what it refers to."""

    hazards: tuple[str, ...]
    """Ids of the hazards whose cautions stand before the action."""
    do_html: str
    """The action, one paragraph."""
    text: str
    """The action as plain text."""
    more_html: str
    """Everything that explains the action."""
    torques: tuple[str, ...]
    """Full ids of the torques named anywhere in the step."""
    readings: tuple[str, ...]
    """Full ids of the readings taken."""
    second_check: bool
    """Whether the author asks for a second check in so many words."""
    takes_off: tuple[str, ...]
    """What comes off the vehicle here."""
    puts_back: tuple[str, ...]
    """What goes back on."""


def read_steps(items: Iterable[Element], write: Write) -> Iterator[StepText]:
    """Read each item of the list as a step."""
    for item in items:
        yield _step(list(_blocks(item)), write)


def _step(blocks: list[Element], write: Write) -> StepText:
    hazards: list[str] = []
    while blocks and (hazard := lone_hazard(blocks[0])) is not None:
        hazards.append(hazard)
        blocks.pop(0)
    do = blocks.pop(0) if blocks else Element("p")
    keys = [link.get(REF, "") for block in (do, *blocks) for link in block.iter("a")]
    text = " ".join("".join(do.itertext()).split())
    opened = [(_open(block), block) for block in blocks]
    if do.tag == "p":
        do.set("class", "uh-step__do")
    return StepText(
        hazards=tuple(hazards),
        do_html=write([do]),
        text=text,
        more_html=write(blocks),
        torques=_ids(keys, "torque"),
        readings=_ids(keys, "reading"),
        second_check=any(name == "check" for name, _ in opened),
        takes_off=_things(opened, "off"),
        puts_back=_things(opened, "on"),
    )


def _things(opened: Iterable[tuple[str | None, Element]], name: str) -> tuple[str, ...]:
    """List what the paragraphs of this name hold, parted by commas."""
    blocks = (block for word, block in opened if word == name)
    return tuple(thing for block in blocks for thing in listed("".join(_after_word(block))))


def _after_word(block: Element) -> Iterator[str]:
    """Yield the texts of a paragraph after the word that opens it."""
    yield block[0].tail or ""
    for child in block[1:]:
        yield from child.itertext()
        yield child.tail or ""


def _open(paragraph: Element) -> str | None:
    """Set the opening word apart and class the paragraph by it."""
    text = (paragraph.text or "").lstrip()
    for word, name in STEP_WORDS.items():
        if paragraph.tag == "p" and text.startswith(f"{word}:"):
            strong = Element("strong")
            strong.text, strong.tail = word, " " + text.removeprefix(f"{word}:").lstrip()
            paragraph.text = ""
            paragraph.insert(0, strong)
            paragraph.set("class", f"uh-step__{name}")
            return name
    return None


def _blocks(item: Element) -> Iterator[Element]:
    """Yield the item's blocks; loose text of a tight list becomes the paragraph it means."""
    loose = Element("p")
    loose.text = item.text
    for child in item:
        if child.tag not in BLOCK_LEVEL_ELEMENTS:
            loose.append(child)
            continue
        if _has_words(loose):
            yield loose
        loose = Element("p")
        loose.text, child.tail = child.tail, None
        yield child
    if _has_words(loose):
        yield loose


def _has_words(element: Element) -> bool:
    return len(element) > 0 or bool((element.text or "").strip())


def _ids(keys: Iterable[str], scheme: str) -> tuple[str, ...]:
    """Full ids of one scheme, each once, in order."""
    found = (key.removeprefix(f"{scheme}:") for key in keys if key.startswith(f"{scheme}:"))
    return tuple(dict.fromkeys(found))
