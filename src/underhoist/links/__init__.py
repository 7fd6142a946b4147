"""From ids to links: where each thing lives on the site, where it is used, what comes before it."""

from underhoist.links.address import (
    address_of,
    page_address,
    rebased,
    relative,
    word_address,
    word_anchor,
)
from underhoist.links.said import words_said
from underhoist.links.web import Links, Says, Uses, uses_of, weave

__all__ = [
    "Links", "Says", "Uses", "address_of", "page_address", "rebased", "relative", "uses_of",
    "weave", "word_address", "word_anchor", "words_said",
]  # fmt: skip
