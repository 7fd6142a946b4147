"""Finds pages that were renamed: gone under one id, there under another, and still themselves."""

import json
from collections.abc import Mapping

from underhoist.history.pairing import text_likeness
from underhoist.history.portrait import Portrait
from underhoist.history.record import Kept
from underhoist.model import Page

SAME = 0.7
"""Likeness from which two pages are one that was renamed."""
MOST = 2_500
"""Pairs that are compared by their text: a manual that was wholly sorted anew is not."""


def renamed(
    old: Mapping[str, Kept], now: Mapping[str, Page], portraits: Mapping[str, Portrait]
) -> dict[str, str]:
    """Give the old key by the new one of each page that was renamed."""
    gone = [key for key in old if key not in now]
    came = [key for key in now if key not in old]
    found: dict[str, str] = {}
    thorough = len(gone) * len(came) <= MOST
    for new in came:
        scores = sorted(
            (-_likeness(old[key], now[new], portraits[new], thorough=thorough), key)
            for key in gone
            if key.partition(":")[0] == new.partition(":")[0]
        )
        if scores and -scores[0][0] >= SAME:
            found[new] = scores[0][1]
            gone.remove(scores[0][1])
    return found


def _likeness(old: Kept, page: Page, portrait: Portrait, *, thorough: bool) -> float:
    if old.portrait == portrait:
        return 1.0
    if old.title == page.title.value:
        return 0.9
    if not thorough:
        return 0.0
    texts = [json.dumps(each, ensure_ascii=False) for each in (old.portrait, portrait)]
    return text_likeness(*texts)
