"""Changes a manual at random, again and again: each comes to a finding or to pages.

    python benchmarks/fuzz.py [how many, 10,000 if not given] [first seed, 0]

Each is read, checked and, where nothing stops it, written as pages and the files beside them. A
traceback or more than 20 s ends as a line with its seed; `tests/hostile/mutated.py` makes it again.
"""

from __future__ import annotations

import random
import signal
import sys
import time
import traceback
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT / "tests" / "hostile"))

import table  # noqa: E402
from mutated import Outcome, Tried  # noqa: E402

HANG = 20
"""Seconds; a manual of this size takes 0.1 s."""
LONGEST_READ = 0.05
"""Seconds in which a page's front matter is read."""


def late(number: int, frame: object) -> None:
    raise TimeoutError(f"more than {HANG} s")


def main(count: int, first: int) -> bool:
    signal.signal(signal.SIGALRM, late)
    tried, outcomes, faults = Tried(), list[Outcome](), 0
    began = time.perf_counter()
    for seed in range(first, first + count):
        signal.alarm(HANG)
        try:
            outcomes.append(tried.one(random.Random(seed)))  # noqa: S311
        except Exception:
            faults += 1
            print(f"seed {seed}\n{traceback.format_exc(limit=-4)}")
        finally:
            signal.alarm(0)
        if (seed + 1 - first) % 500 == 0:
            print(f"{seed + 1 - first} tried, {faults} faults", flush=True)
    took = time.perf_counter() - began
    sites = sum(each.pages > 0 for each in outcomes)
    slow = sorted(each.seconds_to_read for each in outcomes)
    late_reads = sum(each > LONGEST_READ for each in slow)
    print(f"{count} manuals in {took:.0f} s: {sites} sites, {faults} faults; reading a page:")
    print(f"median {slow[count // 2] * 1000:.1f} ms, longest {slow[-1] * 1000:.1f} ms")
    return table.enter("fuzz", [
        table.Row(what="changed manuals tried", ours=count, unit="",
                  budget="at least 10,000", held=count >= 10_000),
        table.Row(what="tracebacks and hangs", ours=faults, unit="",
                  budget="none", held=not faults),
        table.Row(what="of them built as sites", ours=sites, unit=""),
        table.Row(what="pages that took over 50 ms to read", ours=late_reads, unit="",
                  budget="none", held=not late_reads),
        table.Row(what="longest reading of a changed page", ours=slow[-1] * 1000, unit="ms"),
    ])  # fmt: skip


if __name__ == "__main__":
    given = [int(word) for word in sys.argv[1:]]
    count, first = (*given, *(10_000, 0)[len(given) :])
    sys.exit(not main(count, first))
