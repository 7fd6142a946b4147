"""Kills a browser with SIGKILL while a card is worked on, and looks at what is there afterwards."""

from __future__ import annotations

import contextlib
import json
import random
from collections import Counter
from pathlib import Path

from card_hands import chain_is_whole, open_cards, tick
from killed_browser import KilledBrowser
from playwright.sync_api import Error, expect

SCRIPT = Path(__file__).with_name("killing.js").read_text(encoding="utf-8")

LIFE = 10
"""Kills that one card lives through; then the next one is begun beside it."""

STEP = 4  # of set-band: it asks for a reading, and the tick needs no second check


class Killing:
    """A phone's browser whose profile outlives it, and what was lost in it so far."""

    def __init__(self, playwright, profile: Path, site_url: str, seed: int = 0) -> None:
        self.browser, self.site_url = KilledBrowser(playwright, profile), site_url
        self.roll = random.Random(seed)  # noqa: S311  (not a secret: when to kill)
        self.kills = 0
        self.card = ""
        self.there: dict[str, dict] = {}
        """What was found on the card's disk after the last kill, by the id of its event."""
        self.heard: list[dict] = []
        """What the page has shown as stored since then."""
        self.confirmed: Counter[str] = Counter()
        self.found: Counter[str] = Counter()
        self.lost: list[str] = []
        self.doubled: list[str] = []
        self.wrong: list[str] = []

    def round(self) -> None:
        """Open the card, compare it with what was shown before, and work until killed."""
        context, page = self.browser.launch()
        self._open(page)
        page.on("console", lambda message: self._hear(message.text))
        self._run(page, "work", 1 + self.kills * 1000)
        enough = len(self.heard) + self.roll.randint(1, 9)
        while len(self.heard) < enough:
            page.wait_for_event("console")
        page.wait_for_timeout(30 * self.roll.random())  # anywhere in the next act
        self.browser.kill()
        with contextlib.suppress(Error):
            context.close()
        self.kills += 1

    def end(self) -> None:
        """Open the card a last time and compare."""
        context, page = self.browser.launch()
        self._open(page)
        context.close()

    def _open(self, page) -> None:
        if self.card:
            self._show(page)
            self._look(page)
        if self.kills % LIFE == 0:
            open_cards(page, self.site_url)
            self.card = self._run(page, "begin", {"root": self.site_url, "only": STEP})
            self.there = {one["id"]: one for one in self._dump(page)["events"]}
            self._show(page)

    def _show(self, page) -> None:
        page.goto("about:blank")  # or else only the address's last part would change
        open_cards(page, self.site_url, f"#card/{self.card}/{STEP}")
        expect(tick(page)).to_be_visible()

    def _dump(self, page) -> dict:
        asked = {"root": self.site_url, "card": self.card, "only": STEP}
        return self._run(page, "dump", asked)

    def _run(self, page, name: str, asked):
        return page.evaluate(f"asked => ({SCRIPT}).{name}(asked)", asked)

    def _hear(self, text: str) -> None:
        if text.startswith("{"):
            self.heard.append(json.loads(text))

    def _look(self, page) -> None:
        """Hold what is on disk and on the screen against what was shown before the kill."""
        dump = self._dump(page)
        now = {one["id"]: one for one in dump["events"]}
        fresh = [one for id_, one in now.items() if id_ not in self.there]
        self.lost += [f"gone: {one}" for id_, one in self.there.items() if now.get(id_) != one]
        self.wrong += [heard["failed"] for heard in self.heard if "failed" in heard]
        told = [(heard["confirmed"], heard["what"]) for heard in self.heard if "confirmed" in heard]
        self.lost += _missing(told, fresh)
        self.doubled += _twice(dump["events"])
        self.wrong += _pictures(dump["events"])
        self._look_at_screen(page, dump)
        self.confirmed.update(kind for kind, _what in told)
        self.found.update(one["kind"] for one in fresh)
        self.there, self.heard = now, []

    def _look_at_screen(self, page, dump: dict) -> None:
        expect(tick(page)).to_have_attribute("data-state", dump["shape"])
        expect(page.locator(".uh-photos li")).to_have_count(dump["photos"])
        if not chain_is_whole(page, self.site_url):
            self.wrong.append(f"a chain is broken after kill {self.kills}")


def _missing(told: list[tuple[str, str]], fresh: list[dict]) -> list[str]:
    """What was shown as stored and is not among the new events."""
    shown = Counter(told)
    stored = Counter((one["kind"], one["what"]) for one in fresh)
    return [f"shown and not there: {lost}" for lost in (shown - stored).elements()]


def _twice(events: list[dict]) -> list[str]:
    """What one act has left twice: acts differ by words, picture or what they take back."""
    marks = [
        (one["kind"], one["of"] or one["what"] or one["sha256"])
        for one in events
        if one["kind"] in {"finding", "photo", "undo"}
        or (one["kind"] == "reading" and len(one["what"]) > len("1.5"))
    ]
    twice = [f"twice: {mark}" for mark, times in Counter(marks).items() if times > 1]
    taken_back = {one["of"] for one in events if one["kind"] == "undo"}
    ticks = [one for one in events if one["kind"] == "tick" and one["step"] == STEP]
    standing = sum(one["id"] not in taken_back for one in ticks)
    twice = [f"twice: {mark}" for mark, times in Counter(marks).items() if times > 1]
    return twice + ([f"ticks that stand: {standing}"] if standing > 1 else [])


def _pictures(events: list[dict]) -> list[str]:
    """Photos whose picture is not the one that was taken."""
    photos = [one for one in events if one["kind"] == "photo"]
    return [f"another picture: {one}" for one in photos if one["picture"] != one["sha256"]]
