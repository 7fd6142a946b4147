"""How soon a preview follows a saved page: python benchmarks/preview_speed.py.

On made-up manuals of 100 and 1,000 procedures: the whole build once, then one saved change at a
time, from the save to the state that browsers are told of. The share of each part is measured in
the same run. Budget: one second on 1,000 procedures, and ten times faster than the whole build.
"""

import json
import statistics
import sys
import tempfile
import time
from io import StringIO
from pathlib import Path

import table
from made_up import write_project

from underhoist.preview import run

SIZES = (100, 1_000)
RUNS = 3
LONGEST = 1.0  # seconds from the save to the page
RATIO = 10.0  # whole build to one page
RESULTS = Path(__file__).parent / "results"

CHANGES = {
    "a text": ("many/band-7.md", "Turn adjuster 1 by hand", "Turn adjuster 1 by hand {n}"),
    "a fault": ("many/band-7.md", "<reading:play>", "<reading:plai{n}>"),
    "a text that 100 pages and more link to": (
        "kestrel-3/leak-check.md", "\n## Steps", "\nLook twice: {n}.\n\n## Steps",
    ),
    "a torque that every page shows": (
        "families/kestrel-3.md", "torque: 120 lbf*in", "torque: {n} lbf*in",
    ),
}  # fmt: skip


def measured(folder: Path, count: int) -> dict[str, object]:
    """Time the whole build and each kind of change."""
    pages = write_project(folder, count)
    into = folder / "preview"
    into.mkdir()
    run.install = lambda *_, **__: None  # the runtime is the same however many pages there are
    began = time.perf_counter()
    preview = run.Preview(folder, into, StringIO())
    whole = time.perf_counter() - began
    shown: list[float] = []
    hang = preview.board.hang

    def noted(now: object) -> None:
        shown.append(time.perf_counter())
        hang(now)  # type: ignore[arg-type]

    preview.board.hang = noted  # type: ignore[method-assign]
    changes = {}
    for name, (file, old, new) in CHANGES.items():
        path = _existing(pages, file)
        text = path.read_text(encoding="utf-8")
        if old not in text:
            raise SystemExit(f"{path} lacks {old!r}")
        first, all_ = [], []
        for n in range(RUNS):
            changed = text.replace(old, new.format(n=101 + n), 1)
            shown.clear()
            path.write_text(changed, encoding="utf-8")
            began = time.perf_counter()
            preview.look()
            first.append(shown[0] - began)
            all_.append(time.perf_counter() - began)
        path.write_text(text, encoding="utf-8")
        preview.look()
        changes[name] = {"page": statistics.median(first), "all": statistics.median(all_)}
    return {"procedures": count, "whole": whole, "changes": changes}


def _existing(pages: Path, file: str) -> Path:
    return next(path for path in sorted(pages.rglob(Path(file).name)) if path.is_file())


def report(runs: list[dict]) -> str:
    """Write the results as Markdown."""
    lines = [
        "# How soon a preview follows a saved page",
        "",
        "Seconds from the save to the page with its findings, and until all other pages that show",
        f"the change are written; medians of {RUNS}. A look at the folder comes every",
        f"{run.PAUSE:.2f} s, which is not in it. The whole build is of the same pages in the same",
        "run, without the runtime.",
        "",
        "| procedures | change | the page | all pages | whole build | whole build : the page |",
        "|---|---|---|---|---|---|",
    ]
    for each in runs:
        for name, took in each["changes"].items():
            lines.append(
                f"| {each['procedures']:,} | {name} | {took['page']:.2f} s | {took['all']:.2f} s "
                f"| {each['whole']:.1f} s | {each['whole'] / took['page']:.0f} |"
            )
    return "\n".join(lines) + "\n"


def main() -> None:
    """Measure, write the table and the figures; exit with 1 over the budget."""
    runs = []
    for count in SIZES:
        with tempfile.TemporaryDirectory() as scratch:
            runs.append(measured(Path(scratch), count))
    RESULTS.mkdir(exist_ok=True)
    (RESULTS / "preview_speed.json").write_text(json.dumps(runs, indent=2) + "\n")
    (RESULTS / "preview_speed.md").write_text(report(runs))
    print(report(runs))
    sys.exit(not table.enter("preview_speed", rows(runs[-1])))


def rows(largest: dict) -> list[table.Row]:
    """Return the budgets of the largest manual."""
    written, whole = largest["changes"]["a text"], largest["whole"]
    words = f"{largest['procedures']:,} procedures, one text changed: "
    soon = written["page"] + run.PAUSE
    return [
        table.Row(
            what=f"{words}the page in the preview, longest wait for a look included",
            ours=soon, unit="s", budget=f"at most {LONGEST:g} s", held=soon <= LONGEST,
        ),
        table.Row(
            what=f"{words}every page that shows it", ours=written["all"], unit="s",
            reference=whole, against="all pages anew", budget="ten times faster",
            held=whole >= RATIO * written["all"],
        ),
    ]  # fmt: skip


if __name__ == "__main__":
    main()
