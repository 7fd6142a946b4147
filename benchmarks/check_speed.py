"""How long `underhoist check` takes, cold, on a made-up manual: python benchmarks/check_speed.py.

Budget: 1,000 procedures under 2 seconds, and growth from 100 to 1,000 no worse than linear.
"""

import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

SMALLEST = Path(__file__).parents[1] / "tests" / "good" / "smallest"
SIZES = (100, 1_000)
RUNS = 5
BUDGET = 2.0  # seconds for the larger size

PROCEDURE = """---
kind: procedure
title: Set band number {n}
summary: Brings the running clearance of band {n} back so that the gear takes up cleanly.
unit_family: kestrel-3
area: bands
minutes: {minutes}
who: apprentice
author: RB
tools: [inch-pound-wrench, square-socket]
parts: [rear-seal]
consumables: [Lint-free rags, Brake cleaner]
torques: [band-seat]
fluids: [DX-2]
cautions: [raised-vehicle, hot-fluid]
readings:
  turns-to-seat: {{name: Turns to the seat, unit: turn, when: as found, limits: 1 to 2 turns}}
  play: {{name: Play at the lever, unit: mm, when: both, limits: 0.5 to {n}.5 mm}}
before: [raise-vehicle{before}]
after: [leak-check]
---
What the driver feels when band {n} is late, in two or three sentences of the length that a teacher
would write, with [the page before]({neighbour}.md) for those who came here first.

## Steps

{steps}
## What follows

Look for weeps by <procedure:leak-check>.
"""
STEP = """{k}. Turn adjuster {k} by hand, read <reading:{reading}>, [seat it](torque:band-seat).

    Why: the clearance decides how long the gear takes to take up.

    Good: the wrench is felt once and the lever is free.

    Mistake: `guessing` the turns instead of counting with <tool:inch-pound-wrench> in hand.

"""


def write_manual(folder: Path, count: int) -> None:
    """Write this many procedures, each with ten steps, around the tests' smallest manual."""
    shutil.copytree(SMALLEST, folder)
    (folder / "many").mkdir()
    for n in range(count):
        steps = "".join(
            STEP.format(k=k, reading="play" if k % 2 else "turns-to-seat") for k in range(1, 11)
        )
        before = f", band-{n - 1}" if n else ""
        text = PROCEDURE.format(
            n=n, minutes=5 + n % 90, before=before, steps=steps, neighbour=f"band-{max(n - 1, 0)}"
        )
        (folder / "many" / f"band-{n}.md").write_text(text, encoding="utf-8")


def seconds(folder: Path) -> float:
    """Time one cold check, and make sure that it was a whole and clean one."""
    start = time.perf_counter()
    command = [sys.executable, "-m", "underhoist", "check", str(folder)]
    result = subprocess.run(command, capture_output=True, text=True, check=True)
    took = time.perf_counter() - start
    if not result.stdout.endswith("nothing found.\n"):
        raise SystemExit(result.stdout)
    return took


def main() -> None:
    """Print the best and the middle of the runs for each size; exit with 1 over the budget."""
    best: dict[int, float] = {}
    with tempfile.TemporaryDirectory() as scratch:
        for size in SIZES:
            folder = Path(scratch) / str(size)
            write_manual(folder, size)
            runs = sorted(seconds(folder) for _ in range(RUNS))
            best[size] = runs[0]
            print(f"{size:>5} procedures: best {runs[0]:.2f} s, middle {runs[RUNS // 2]:.2f} s")
    small, large = (best[size] for size in SIZES)
    print(f"growth for {SIZES[1] // SIZES[0]} times as many: {large / small:.1f} times as long")
    sys.exit(large > BUDGET)


if __name__ == "__main__":
    main()
