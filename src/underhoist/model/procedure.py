"""`kind: procedure`: one job, its needs, its values and its steps."""

from collections.abc import Mapping

from attrs import field, frozen
from underhoist_calculators.units import Span

from underhoist.model.family import Fastener
from underhoist.model.page import Page
from underhoist.place import Placed

Ids = tuple[Placed[str], ...]


@frozen(kw_only=True)
class Reading:
    """Something measured during the work."""

    name: Placed[str] = field(metadata={"help": "What is measured."})
    unit: Placed[str] = field(metadata={"help": "Unit it is read in, e.g. turn, inHg, km/h."})
    when: Placed[str] = field(metadata={"help": "as found, as left or both."})
    limits: Placed[Span] | None = field(
        default=None, metadata={"help": "Lowest to highest good value, e.g. 15 to 20 inHg."}
    )


@frozen(kw_only=True)
class Procedure(Page):
    """A job. Its steps are the ordered list under the heading Steps."""

    unit_family: Ids = field(metadata={"help": "One family's id, a list of them, or any."})
    area: Placed[str] = field(metadata={"help": "Part of the work, e.g. bands, fluid, seals."})
    minutes: Placed[int] = field(metadata={"help": "How long it takes, in minutes."})
    who: Placed[str] = field(metadata={"help": "apprentice or senior."})
    tools: Ids = field(default=(), metadata={"help": "Ids of tool pages."})
    parts: Ids = field(default=(), metadata={"help": "Ids of the family's parts."})
    consumables: Ids = field(default=(), metadata={"help": "Rags, cleaner, sealant: plain text."})
    torques: Ids = field(default=(), metadata={"help": "Ids of the fasteners tightened here."})
    fasteners: Mapping[str, Fastener] = field(
        factory=dict, metadata={"help": "Fasteners that only this procedure knows."}
    )
    fluids: Ids = field(default=(), metadata={"help": "Specifications of the fluids used."})
    cautions: Ids = field(default=(), metadata={"help": "Ids of the hazards to know first."})
    readings: Mapping[str, Reading] = field(
        factory=dict, metadata={"help": "What is measured, by id."}
    )
    before: Ids = field(default=(), metadata={"help": "Ids of procedures that come first."})
    after: Ids = field(default=(), metadata={"help": "Ids of procedures that follow."})
    author: Placed[str] | None = field(default=None, metadata={"help": "Author's initials."})
