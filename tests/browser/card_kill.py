"""Kills a browser with SIGKILL while it ticks, and looks at what is there afterwards."""

from __future__ import annotations

import contextlib
import os
import random
import shutil
import signal
import time
from pathlib import Path

from card_hands import chain_is_whole, open_cards, start_card, stored_events, tick, tick_and_sign
from playwright.sync_api import Error, expect

CHROMIUM = os.environ.get("UNDERHOIST_CHROMIUM") or shutil.which("chromium")

# Ticks and takes back, through the page's own buttons, as fast as each is shown as stored. The
# guard against a second tap too soon is for thumbs: here the clock it looks at runs ahead.
TICK_AND_UNDO = """() => {
    const real = performance.now.bind(performance);
    let ahead = 0;
    performance.now = () => real() + (ahead += 1000);
    const tick = document.querySelector("button.uh-tick");
    const becomes = (state) => new Promise((done) => {
        const look = () => tick.dataset.state === state && (watch.disconnect(), done());
        const watch = new MutationObserver(look);
        watch.observe(tick, { attributes: true });
        look();
    });
    const work = async () => {
        for (;;) {
            if (tick.dataset.state === "todo") {
                tick.click();
                await becomes("stored");
            } else {
                await becomes("stored");
                [...document.querySelectorAll(".uh-card__others button")].at(-1).click();
                await becomes("todo");
            }
            console.log("confirmed " + tick.dataset.state);
            await new Promise((done) => setTimeout(done, 0));
        }
    };
    void work();
}"""


class Killing:
    """A phone's browser whose profile outlives it."""

    def __init__(self, playwright, profile: Path, site_url: str, seed: int = 0) -> None:
        self.playwright, self.profile, self.site_url = playwright, profile, site_url
        self.roll = random.Random(seed)  # noqa: S311  (not a secret: when to kill)
        self.confirmed = 0
        """Changes that the page has shown as stored, over all rounds."""
        self.card = ""
        self.last = self.prepared = 0

    def begin(self) -> None:
        """Start a card and tick all but one step of it: that one stays in hand from then on."""
        context, page = self._launch()
        self.card = start_card(page, self.site_url, "book-in")
        title = page.locator(".uh-card__title")
        steps = int(title.inner_text().split()[-1])
        for step in range(1, steps):
            tick_and_sign(page, step, steps)
        expect(title).to_have_text(f"Step {steps} of {steps}")
        self.last = steps
        self.prepared = len(stored_events(page, self.site_url))
        context.close()

    def round(self) -> int:
        """Tick until killed at a random moment; returns how many changes were confirmed."""
        context, page = self._launch()
        open_cards(page, self.site_url, f"#card/{self.card}/{self.last}")
        expect(tick(page)).to_be_visible()
        heard: list[str] = []
        page.on("console", lambda message: heard.append(message.text))
        page.evaluate(TICK_AND_UNDO)
        page.wait_for_timeout(150 + 900 * self.roll.random())
        self._kill()
        with contextlib.suppress(Error):
            context.close()
        count = sum(text.startswith("confirmed ") for text in heard)
        self.confirmed += count
        return count

    def look(self) -> dict[str, int]:
        """Open the card again; fail where a confirmed change is lost or one is there twice."""
        context, page = self._launch()
        open_cards(page, self.site_url, f"#card/{self.card}/{self.last}")
        expect(tick(page)).to_be_visible()
        events = stored_events(page, self.site_url)
        changes = [event["kind"] for event in events[self.prepared :]]
        lost = max(self.confirmed - len(changes), 0)
        wanted = ["tick", "undo"] * (len(changes) // 2 + 1)
        doubled = sum(kind != want for kind, want in zip(changes, wanted, strict=False))
        state = "stored" if len(changes) % 2 else "todo"
        expect(tick(page)).to_have_attribute("data-state", state)
        assert chain_is_whole(page, self.site_url)
        context.close()
        return {"there": len(changes), "lost": lost, "doubled": doubled}

    def _launch(self):
        found = {"executable_path": CHROMIUM} if CHROMIUM else {}
        context = self.playwright.chromium.launch_persistent_context(
            str(self.profile), **found, args=["--no-sandbox", "--disable-gpu", "--no-first-run"],
            viewport={"width": 390, "height": 844}, service_workers="block",
        )  # fmt: skip
        return context, context.pages[0] if context.pages else context.new_page()

    def _kill(self) -> None:
        """Every process of this browser at once, without a chance to write anything more."""
        own = {pid for pid in _pids() if str(self.profile) in _command(pid)}
        while grown := {pid for pid in _pids() if _parent(pid) in own} - own:
            own |= grown
        assert own, "there is a browser to kill"
        for pid in own:
            with contextlib.suppress(ProcessLookupError):
                os.kill(pid, signal.SIGKILL)
        until = time.monotonic() + 10
        while any(_is_alive(pid) for pid in own) and time.monotonic() < until:
            time.sleep(0.01)


def _pids() -> list[int]:
    return [int(path.name) for path in Path("/proc").iterdir() if path.name.isdigit()]


def _command(pid: int) -> str:
    try:
        return Path(f"/proc/{pid}/cmdline").read_bytes().decode(errors="replace")
    except OSError:
        return ""


def _status(pid: int) -> list[str]:
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    except OSError:
        return []


def _parent(pid: int) -> int:
    status = _status(pid)
    return int(status[1]) if status else 0


def _is_alive(pid: int) -> bool:
    status = _status(pid)
    return bool(status) and status[0] != "Z"
