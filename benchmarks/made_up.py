"""A made-up manual of any size, of procedures shaped like the demo's: what growth is measured on.

Each has ten steps, two readings, a torque in every step, cautions, tools and links to others.
Equal counts give equal manuals. From a shell: python benchmarks/made_up.py FOLDER COUNT.
"""

import random
import re
import shutil
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
SMALLEST = ROOT / "tests" / "good" / "smallest"
SAID = re.compile(r"^ +(Why|Good): ([A-Z][^<>\[\]()0-9`:]{20,200}[.])$", re.MULTILINE)
"""What the demo says of its steps, in words alone: made-up pages draw from it."""
AREAS = ("bands", "pan", "fluid", "seals", "linkage", "driveline", "signal", "road test")
SETTINGS = "site_name: Measured\ndocs_dir: pages\ntheme: {name: material}\nplugins: [underhoist]\n"
STOCK = "site_name: Measured\ndocs_dir: pages\ntheme: {name: material}\n"
"""The same pages with the theme as it is published: navigation, search, its own styles."""

PROCEDURE = """---
kind: procedure
title: Set band number {n}
summary: Brings the running clearance of band {n} back so that the gear takes up cleanly.
unit_family: kestrel-3
area: {area}
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

    Why: {why}

    Good: {good}

    Mistake: `guessing` the turns instead of counting with <tool:inch-pound-wrench> in hand.

"""


def write_manual(folder: Path, count: int) -> None:
    """Write this many procedures, each with ten steps, around the tests' smallest manual."""
    shutil.copytree(SMALLEST, folder)
    (folder / "many").mkdir()
    said = _said()
    for n in range(count):
        draw = random.Random(n)  # noqa: S311 - drawn alike at every run
        steps = "".join(
            STEP.format(
                k=k,
                reading="play" if k % 2 else "turns-to-seat",
                why=draw.choice(said["Why"]),
                good=draw.choice(said["Good"]),
            )
            for k in range(1, 11)
        )
        before = f", band-{n - 1}" if n else ""
        text = PROCEDURE.format(
            n=n,
            area=AREAS[n % len(AREAS)],
            minutes=5 + n % 90,
            before=before,
            steps=steps,
            neighbour=f"band-{max(n - 1, 0)}",
        )
        (folder / "many" / f"band-{n}.md").write_text(text, encoding="utf-8")


def _said() -> dict[str, list[str]]:
    """Collect the demo's explanations, by what they are."""
    found: dict[str, list[str]] = {"Why": [], "Good": []}
    for page in sorted((ROOT / "procedures").rglob("*.md")):
        for kind, words in SAID.findall(page.read_text(encoding="utf-8")):
            found[kind].append(words)
    return found


def write_project(folder: Path, count: int) -> Path:
    """Write a project with so many procedures; return the folder of its pages."""
    pages = folder / "pages"
    write_manual(pages, count)
    (folder / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    (folder / "stock.yml").write_text(STOCK, encoding="utf-8")
    return pages


if __name__ == "__main__":
    write_project(Path(sys.argv[1]), int(sys.argv[2]))
