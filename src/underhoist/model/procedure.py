"""`kind: procedure`: one job, its needs, its values and its steps."""

from collections.abc import Mapping
from typing import Literal

from attrs import field, frozen

from underhoist.model.family import Fastener
from underhoist.model.page import Page
from underhoist.model.values import Id, IdPath, Limits, Minutes, UnitName
from underhoist.place import Placed

Ids = tuple[Placed[Id], ...]
IdPaths = tuple[Placed[IdPath], ...]
Texts = tuple[Placed[str], ...]


@frozen(kw_only=True)
class Reading:
    """Something measured during the work."""

    name: Placed[str] = field(metadata={"help": "What is measured."})
    unit: Placed[UnitName] = field(metadata={"help": "Unit it is read in, e.g. turn, inHg, km/h."})
    when: Placed[Literal["as found", "as left", "both"]] = field(
        metadata={"help": "as found, as left or both."}
    )
    limits: Placed[Limits] | None = field(
        default=None, metadata={"help": "Lowest to highest good value, e.g. 15 to 20 inHg."}
    )
    fluid: Placed[Literal["in", "out"]] | None = field(
        default=None, metadata={"help": "in or out: it counts as fluid put in or come out."}
    )


@frozen(kw_only=True)
class Procedure(Page):
    """A job. Its steps are the ordered list under the heading Steps."""

    unit_family: Ids = field(
        metadata={"help": "One family's id, a list of them, or any.", "to": "family"}
    )
    area: Placed[str] = field(metadata={"help": "Part of the work, e.g. bands, fluid, seals."})
    minutes: Placed[Minutes] = field(metadata={"help": "How long it takes, in minutes."})
    who: Placed[Literal["apprentice", "senior"]] = field(metadata={"help": "apprentice or senior."})
    tools: Ids = field(default=(), metadata={"help": "Ids of tool pages.", "to": "tool"})
    parts: IdPaths = field(
        default=(), metadata={"help": "Ids of the family's parts.", "to": "part"}
    )
    consumables: Texts = field(default=(), metadata={"help": "Rags, cleaner, sealant: plain text."})
    torques: IdPaths = field(
        default=(), metadata={"help": "Ids of the fasteners tightened here.", "to": "torque"}
    )
    fasteners: Mapping[Id, Fastener] = field(
        factory=dict[str, Fastener], metadata={"help": "Fasteners that only this procedure knows."}
    )
    fluids: Texts = field(default=(), metadata={"help": "Specifications of the fluids used."})
    cautions: Ids = field(
        default=(), metadata={"help": "Ids of the hazards to know first.", "to": "hazard"}
    )
    readings: Mapping[Id, Reading] = field(
        factory=dict[str, Reading], metadata={"help": "What is measured, by id."}
    )
    before: Ids = field(
        default=(), metadata={"help": "Ids of procedures that come first.", "to": "procedure"}
    )
    after: Ids = field(
        default=(), metadata={"help": "Ids of procedures that follow.", "to": "procedure"}
    )
    needs: Ids = field(
        default=(),
        metadata={
            "help": "Ids of procedures that must be done at the same visit, whatever their order.",
            "to": "procedure",
        },
    )
    ends: Ids = field(
        default=(),
        metadata={
            "help": "Ids of procedures whose state this one ends, as lowering ends raising: it "
            "comes after all that wait for them, and a job card that has them has it too.",
            "to": "procedure",
        },
    )
