"""What every page has, whatever its kind."""

from collections.abc import Mapping

from attrs import field, frozen

from underhoist.model.access import Access
from underhoist.model.values import WordName
from underhoist.model.word import Word
from underhoist.place import Placed


@frozen
class Body:
    """The Markdown below the front matter and the line of the file it starts on."""

    text: str
    first_line: int


@frozen(kw_only=True)
class Page:
    """A page of the manual. Its id is its file name without the ending."""

    id: str
    file: str
    body: Body
    title: Placed[str] = field(metadata={"help": "What the page is called, as the shop says it."})
    summary: Placed[str] = field(metadata={"help": "What it is for, in one sentence."})
    author: Placed[str] | None = field(default=None, metadata={"help": "Author's initials."})


@frozen(kw_only=True)
class Draft(Page):
    """A page whose front matter has faults: its text is all that can be checked in the same run."""

    kind: str
    partial: "Page | None" = None
    """As much of the page as could be read, where something of it can be shown."""


@frozen(kw_only=True)
class PlainPage(Page):
    """`kind: page`: text that belongs to no other kind."""

    words: Mapping[WordName, Word] = field(
        factory=dict[str, Word], metadata={"help": "The shop's word for each thing, once."}
    )
    access: Mapping[WordName, Access] = field(
        factory=dict[str, Access],
        metadata={"help": "How far in the checks of faults go, each with its minutes, once."},
    )
