"""`kind: tool`: something to fetch."""

from attrs import field, frozen

from underhoist.model.page import Page
from underhoist.model.values import TorqueSpan, TorqueUnit
from underhoist.place import Placed


@frozen(kw_only=True)
class Tool(Page):
    """A tool. A torque wrench says what it covers and which unit its scale reads."""

    torque_range: Placed[TorqueSpan] | None = field(
        default=None, metadata={"help": "What a torque wrench covers, e.g. 30 to 200 lbf*in."}
    )
    scale: Placed[TorqueUnit] | None = field(
        default=None, metadata={"help": "Unit on its scale, e.g. lbf*in."}
    )
