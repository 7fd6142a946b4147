"""The browser is killed while a card is worked on: what was shown as stored is there, once."""

from __future__ import annotations

import sys

import pytest
from killing import Killing

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(sys.platform != "linux", reason="finds the browser's processes in /proc"),
]

KILLS = 8
"""Each works on until 1 to 9 acts were shown as stored; benchmarks/card_kill.py kills 200 times."""


def test_nothing_confirmed_is_lost_or_doubled(playwright, tmp_path, site_url):
    phone = Killing(playwright, tmp_path / "profile", site_url)
    for _ in range(KILLS):
        phone.round()
    phone.end()
    assert (phone.lost, phone.doubled, phone.wrong) == ([], [], [])
    assert {*phone.confirmed} == {"tick", "undo", "reading", "finding", "photo"}
    assert phone.confirmed.total() >= KILLS, "the page was working when it was killed"
