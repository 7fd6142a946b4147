"""Changes a manual at random, again and again: each comes to a finding or to pages.

    python benchmarks/fuzz.py [how many, 10,000 if not given] [first seed, 0]

Each is read, checked and, where nothing stops it, written as pages and the files beside them; one
in ten of these is built as a whole site on the disk. A traceback or more than 20 s ends as a line
with its seed; `tests/hostile/mutated.py` makes it again. All processors work on it.

Then every parser by itself (front matter, quantities, tyres, bodies, card files) is given ten times
as many texts as in the tests, others in each run.
"""

from __future__ import annotations

import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import traceback
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT / "tests" / "hostile"))
sys.path.insert(0, str(ROOT / "tests" / "shared"))

import table  # noqa: E402
from mutated import Outcome, Tried  # noqa: E402
from small_project import make_project  # noqa: E402

HANG = 20
"""Seconds of the clock; a manual of this size takes 0.1 s."""
LONGEST_READ = 0.05
"""Seconds of the processor in which a page's front matter is read."""
STRETCH = 250
"""Manuals that a process tries before it tells of them."""

LONGER = 10
"""Times as many texts for each parser as in the tests."""
PARSERS = ("test_values.py", "test_front_matter.py", "test_bodies.py")

type Tries = tuple[list[Outcome], list[str]]
"""What the manuals came to, and the faults with their seeds."""


def late(number: int, frame: object) -> None:
    raise TimeoutError(f"more than {HANG} s")


def stretch(first: int, count: int) -> Tries:
    signal.signal(signal.SIGALRM, late)
    outcomes, faults = list[Outcome](), list[str]()
    with tempfile.TemporaryDirectory() as folder:
        tried = Tried(make_project(Path(folder) / "project"))
        for seed in range(first, first + count):
            signal.alarm(HANG)
            try:
                outcomes.append(tried.one(random.Random(seed)))  # noqa: S311
            except Exception:
                faults.append(f"seed {seed}\n{traceback.format_exc(limit=-4)}")
            finally:
                signal.alarm(0)
    return outcomes, faults


def every(count: int, first: int) -> Tries:
    outcomes, faults = list[Outcome](), list[str]()
    with ProcessPoolExecutor() as pool:
        last = first + count
        parts = [
            pool.submit(stretch, start, min(STRETCH, last - start))
            for start in range(first, last, STRETCH)
        ]
        for part in as_completed(parts):
            some, wrong = part.result()
            outcomes += some
            faults += wrong
            print(*wrong, f"{len(outcomes)} tried, {len(faults)} faults", sep="\n", flush=True)
    return outcomes, faults


def parsers() -> bool:
    """Give every parser many texts; whether each came to a value or a clear error."""
    node = shutil.which("node", path=str(Path(sys.executable).parent)) or "node"
    hostile = ROOT / "tests" / "hostile"
    commands = (
        [sys.executable, "-m", "pytest", "-q", "-p", "no:xdist", *(hostile / f for f in PARSERS)],
        [node, "--test", ROOT / "tests" / "cards" / "file_fuzz.test.js"],
    )
    wider = {**os.environ, "UNDERHOIST_TRIES": str(LONGER)}
    done = [subprocess.run(each, env=wider, cwd=ROOT, check=False) for each in commands]
    return all(each.returncode == 0 for each in done)


def rows(outcomes: Sequence[Outcome], faults: Sequence[str], sound: bool) -> list[table.Row]:
    count = len(outcomes) + len(faults)
    slow = max(each.seconds_to_read for each in outcomes)
    late_reads = sum(each.seconds_to_read > LONGEST_READ for each in outcomes)
    return [
        table.Row(what="changed manuals tried", ours=count, unit="",
                  budget="at least 10,000", held=count >= 10_000),
        table.Row(what="tracebacks and hangs", ours=len(faults), unit="",
                  budget="none", held=not faults),
        table.Row(what="of them written as pages",
                  ours=sum(each.pages > 0 for each in outcomes), unit=""),
        table.Row(what="of these built as whole sites",
                  ours=sum(each.whole for each in outcomes), unit=""),
        table.Row(what="pages that took over 50 ms of the processor to read", ours=late_reads,
                  unit="", budget="none", held=not late_reads),
        table.Row(what="parsers that failed at ten times the tests' texts",
                  ours=int(not sound), unit="", budget="none", held=sound),
        table.Row(what="longest reading of a changed page", ours=slow * 1000, unit="ms"),
    ]  # fmt: skip


def main(count: int, first: int) -> bool:
    began = time.perf_counter()
    outcomes, faults = every(count, first)
    print(f"{count} manuals in {time.perf_counter() - began:.0f} s")
    return table.enter("fuzz", rows(outcomes, faults, parsers()))


if __name__ == "__main__":
    given = [int(word) for word in sys.argv[1:]]
    count, first = (*given, *(10_000, 0)[len(given) :])
    sys.exit(not main(count, first))
