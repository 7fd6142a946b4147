"""The browser is killed while it ticks: what was shown as stored is there, once."""

from __future__ import annotations

import sys

import pytest
from card_kill import Killing

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(sys.platform != "linux", reason="finds the browser's processes in /proc"),
]

KILLS = 5


def test_nothing_confirmed_is_lost_or_doubled(playwright, tmp_path, site_url):
    phone = Killing(playwright, tmp_path / "profile", site_url)
    phone.begin()
    for _ in range(KILLS):
        assert phone.round() > 0, "the page was working when it was killed"
        found = phone.look()
        assert (found["lost"], found["doubled"]) == (0, 0)
        phone.confirmed = found["there"]
    assert phone.confirmed >= KILLS
