"""Kills a browser at random moments of work on a job card, and counts what was lost.

    python benchmarks/card_kill.py [kills, 200 if not given]

Ticks, undoes, readings, findings and photos follow one another through the page's own buttons; the
browser's processes get SIGKILL, its profile is opened again. Linux only: they are found in /proc.
Writes benchmarks/results/card_kill.md. UNDERHOIST_TEST_SITE names a built site.
"""

from __future__ import annotations

import sys
import tempfile
import time
from datetime import UTC, datetime
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
RESULT = ROOT / "benchmarks" / "results" / "card_kill.md"
sys.path[:0] = [str(ROOT / "tests" / "browser"), str(ROOT / "benchmarks")]

import table  # noqa: E402
from built_site import site_in  # noqa: E402
from killing import LIFE, Killing  # noqa: E402
from playwright.sync_api import sync_playwright  # noqa: E402
from static_server import StaticServer  # noqa: E402

KILLS = 200
KINDS = {
    "tick": "ticks",
    "undo": "undoes",
    "reading": "readings",
    "finding": "findings",
    "photo": "photos, each with its picture",
}


def kill_often(site: Path, profile: Path, kills: int) -> Killing:
    """Kill, look, and kill again."""
    server = StaticServer(site)
    with sync_playwright() as playwright:
        phone = Killing(playwright, profile, server.url, seed=kills)
        for _ in range(kills):
            phone.round()
            bad = len(phone.lost) + len(phone.doubled) + len(phone.wrong)
            print(f"\r  killed {phone.kills} times, {bad} things wrong", end="", flush=True)
        phone.end()
    server.stop()
    print()
    return phone


def report(phone: Killing, seconds: float) -> str:
    """The result as a page."""
    today = datetime.now(UTC).date()
    rows = [
        f"| {words} | {phone.confirmed[kind]:,} | {phone.found[kind]:,} |"
        for kind, words in KINDS.items()
    ]
    return f"""# What a killed browser loses of a job card

Made by `python benchmarks/card_kill.py {phone.kills}` on {today}, in {seconds:.0f} s.

The browser got SIGKILL {phone.kills} times, 0.1 to 1.2 s into the work; a card lived through {LIFE}
kills. After each, the card opened, its screen agreed with its events, and every chain was checked.
More can be there than was shown: what was stored when the browser died before it could say so.

| in {phone.kills} kills | shown as stored | there after the restart |
|---|---:|---:|
{"\n".join(rows)}
| **all** | **{phone.confirmed.total():,}** | **{phone.found.total():,}** |

Lost {len(phone.lost)}, doubled {len(phone.doubled)}, otherwise wrong {len(phone.wrong)}.
"""


def main() -> int:
    """Run as often as asked, write the result, say what is wrong."""
    if sys.platform != "linux":
        print("  This benchmark finds the browser's processes in /proc: it runs on Linux only.")
        return 0
    kills = int(sys.argv[1]) if len(sys.argv) > 1 else KILLS
    began = time.monotonic()
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        phone = kill_often(site_in(Path(folder)), Path(folder) / "profile", kills)
    text = report(phone, time.monotonic() - began)
    if kills >= KILLS:
        RESULT.write_text(text, encoding="utf-8")
        lost = len(phone.lost)
        row = table.Row(
            what=f"events lost of {phone.confirmed.total():,} that were shown as stored, in "
            f"{kills} kills of the browser",
            ours=lost, unit="", budget="none", held=lost == 0,
        )  # fmt: skip
        table.enter("card_kill", [row])
    print(text)
    bad = [*phone.lost, *phone.doubled, *phone.wrong]
    print("\n".join(bad))
    return int(bool(bad))


if __name__ == "__main__":
    sys.exit(main())
