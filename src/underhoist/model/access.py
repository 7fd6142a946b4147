"""`access` on a page: what must be open before a check can be made, and what it takes."""

from collections.abc import Mapping
from typing import Annotated

from attrs import field, frozen

from underhoist.model.values import Bounds, Id
from underhoist.place import Placed

AccessMinutes = Annotated[int, Bounds(0, 10_000)]


@frozen(kw_only=True)
class Access:
    """One word for how far in a check goes, which is the key it stands under."""

    minutes: Placed[AccessMinutes] = field(
        metadata={"help": "Minutes to get there, from the access it leads through if any."}
    )
    through: Placed[str] | None = field(
        default=None, metadata={"help": "The access that comes first, e.g. on the hoist."}
    )
    meaning: Placed[str] | None = field(default=None, metadata={"help": "What it means."})
    procedure: Placed[Id] | None = field(
        default=None,
        metadata={"help": "Id of the procedure that tells how to get there.", "to": "procedure"},
    )


def whole_minutes(declared: Mapping[str, Access], name: str) -> int:
    """Add up the minutes of the way from the start; a way through itself is counted once."""
    seen: set[str] = set()
    total = 0
    while name in declared and name not in seen:
        seen.add(name)
        total += declared[name].minutes.value
        through = declared[name].through
        name = through.value if through else ""
    return total
