"""One page of the site."""

from attrs import frozen
from markupsafe import Markup

from underhoist.pages.steps import Step


@frozen(kw_only=True)
class Sheet:
    """A finished page: what stands on it and what the theme must know of it."""

    address: str
    """Below the site's root: "" is the front page, "tools/hoist/" a page in a folder."""
    kind: str
    title: str
    summary: str
    html: Markup
    trail: tuple[tuple[str, str], ...] = ()
    """Title and address of the pages above it, the front page left out."""
    revision: str | None = None
    since: str | None = None
    """Day on which the revision was first built, in words."""
    author: str | None = None
    steps: tuple[Step, ...] = ()
    """The steps of a procedure, for job cards."""
    data: str = ""
    """What the page says, as JSON-LD for machines, safe within a script element."""
    searched: bool = True
    """Whether the search knows the page: not where it only repeats what other pages say."""
