"""Finds pages that were renamed: gone under one id, there under another, and still themselves."""

import json
import re
from collections.abc import Mapping
from typing import Protocol

from underhoist.history.pairing import text_likeness
from underhoist.history.portrait import Portrait

SAME = 0.7
"""Likeness from which two pages are one that was renamed."""
MOST = 2_500
"""Pairs that are compared by their text: a manual that was wholly sorted anew is not."""


class Titled(Protocol):
    """A page with its title and portrait."""

    @property
    def title(self) -> str:
        """What the page is called."""
        ...

    @property
    def portrait(self) -> Portrait:
        """All that it says."""
        ...


def renamed(old: Mapping[str, Titled], now: Mapping[str, Titled]) -> dict[str, str]:
    """Give the old key by the new one of each page that was renamed."""
    gone = [key for key in old if key not in now]
    came = [key for key in now if key not in old]
    found: dict[str, str] = {}
    thorough = len(gone) * len(came) <= MOST
    for new in came:
        scores = sorted(
            (-_likeness(old[key], now[new], thorough=thorough), key)
            for key in gone
            if key.partition(":")[0] == new.partition(":")[0]
        )
        if scores and -scores[0][0] >= SAME:
            found[new] = scores[0][1]
            gone.remove(scores[0][1])
    return found


def following(portrait: Portrait, came_from: Mapping[str, str]) -> Portrait:
    """Give an old portrait as if what it names had its new id already."""
    text = json.dumps(portrait, ensure_ascii=False)
    for new, old in came_from.items():
        text = re.sub(rf"\b{re.escape(old)}(?![a-z0-9-])", new, text)
    return json.loads(text)


def _likeness(old: Titled, page: Titled, *, thorough: bool) -> float:
    if old.portrait == page.portrait:
        return 1.0
    if old.title == page.title:
        return 0.9
    if not thorough:
        return 0.0
    texts = [json.dumps(each, ensure_ascii=False) for each in (old.portrait, page.portrait)]
    return text_likeness(*texts)
