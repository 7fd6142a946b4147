"""`kind: hazard`: a danger, by the signal words of ISO 3864 / ANSI Z535.6."""

from typing import Literal

from attrs import Factory, field, frozen

from underhoist.model.page import Page
from underhoist.model.values import Id
from underhoist.place import Placed


@frozen(kw_only=True)
class RequiredWhen:
    """What makes this hazard's caution a must."""

    tools: tuple[Placed[Id], ...] = field(
        default=(), metadata={"help": "Ids of tools.", "to": "tool"}
    )
    areas: tuple[Placed[str], ...] = field(default=(), metadata={"help": "Areas of work."})
    fluids: tuple[Placed[str], ...] = field(default=(), metadata={"help": "Fluids."})
    words: tuple[Placed[str], ...] = field(default=(), metadata={"help": "Words in a step."})


@frozen(kw_only=True)
class Hazard(Page):
    """A danger, the harm it does and how to avoid it."""

    signal: Placed[Literal["danger", "warning", "caution", "notice"]] = field(
        metadata={"help": "danger, warning, caution or notice."}
    )
    harm: Placed[str] = field(metadata={"help": "What happens to whom."})
    avoid: Placed[str] = field(metadata={"help": "What to do so that it does not."})
    required_when: RequiredWhen = field(
        default=Factory(RequiredWhen), metadata={"help": "When the caution must be declared."}
    )
