"""`words` on a page: what the shop calls a thing, and what others call it."""

from attrs import field, frozen

from underhoist.model.values import WordName
from underhoist.place import Placed


@frozen(kw_only=True)
class Word:
    """One thing, whose name in this shop is the key it stands under."""

    also: tuple[Placed[WordName], ...] = field(
        default=(),
        metadata={"help": "Other names of the same thing: searched, and the text says ours."},
    )
    heard: tuple[Placed[WordName], ...] = field(
        default=(),
        metadata={"help": "Names that can mean something else too: searched, free in the text."},
    )
    meaning: Placed[str] | None = field(
        default=None, metadata={"help": "What it is, in one sentence."}
    )
