"""From ids to links: where each thing lives on the site, where it is used, what comes before it."""

from underhoist.links.address import (
    address_of,
    page_address,
    rebased,
    relative,
    word_address,
    word_anchor,
)
from underhoist.links.web import Links, Uses, uses_of, weave

__all__ = [
    "Links", "Uses", "address_of", "page_address", "rebased", "relative", "uses_of", "weave",
    "word_address", "word_anchor",
]  # fmt: skip
