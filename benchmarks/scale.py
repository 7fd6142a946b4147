"""What grows with the manual, and how fast: python benchmarks/scale.py [COUNT ...].

Made-up manuals of 100, 1,000 and 3,000 procedures: check and build, each cold, in processes of
their own, in a Python with what users have; the theme as published on the same Markdown in the
same run, if it ends within five minutes; the build after one changed file; what a phone gets.
"""

import gzip
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from threading import Timer
from typing import Any

import table
from attrs import asdict, frozen
from made_up import write_project
from playwright.sync_api import sync_playwright
from search_speed import CHROMIUM, QUIET, measured, typed
from search_speed import rows as search_rows
from users_python import users_python

SIZES = (100, 1_000, 3_000)
PATIENCE = 300
"""Seconds that the stock theme gets: its every page repeats the navigation."""
CHECKS = 3
BUILDS = 2
CHANGES = 3
"""Runs of each kind: the one counts that the machine disturbed least."""
CHANGED = "many/band-7.md"
SAME = "many/band-50/index.html"
RESULTS = Path(__file__).parent / "results"


@frozen
class Took:
    """What a process and those it started took: seconds, seconds of the processor, megabytes."""

    wall: float
    cpu: float
    peak: float


def run(*command: str) -> Took:
    """Run a command out of sight to its good end."""
    took = tried(*command)
    if took is None:
        raise SystemExit(f"{' '.join(command)} was given no time")
    return took


def tried(*command: str, patience: float | None = None) -> Took | None:
    """Run a command out of sight to its good end; None where so many seconds were not enough."""
    began = time.perf_counter()
    quiet = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    quiet.pop("PYTHONDONTWRITEBYTECODE", None)  # people's Python keeps what it compiled
    with subprocess.Popen(command, stdout=subprocess.DEVNULL, env=quiet) as process:
        timer = Timer(patience, process.kill) if patience else None
        if timer:
            timer.start()
        _, status, used = os.wait4(process.pid, 0)
        if timer:
            timer.cancel()
        process.returncode = os.waitstatus_to_exitcode(status)
    wall = time.perf_counter() - began
    if patience and wall >= patience:
        return None
    if process.returncode != 0:
        raise SystemExit(f"{' '.join(command)} ended with {process.returncode}")
    return Took(wall, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024)


def best(runs: Sequence[Took]) -> Took:
    """Return the run that the machine disturbed least."""
    return min(runs, key=lambda each: each.cpu)


def weighed(site: Path) -> dict[str, Any]:
    """Weigh what a phone gets; bytes, pages compressed."""
    files = [path for path in site.rglob("*") if path.is_file()]
    pages = {
        path.relative_to(site).as_posix(): len(gzip.compress(path.read_bytes(), 9))
        for path in files
        if path.name == "index.html"
    }
    largest = max(pages, key=pages.__getitem__)
    own = [path for path in files if site / "runtime" not in path.parents]
    return {
        "pages": len(pages),
        "files": len(own),
        "site": sum(path.stat().st_size for path in own),
        "same_page": pages[SAME],
        "front": pages["index.html"],
        "largest": pages[largest],
        "largest_page": largest.removesuffix("index.html"),
        "index": len(gzip.compress((site / "search/index.json").read_bytes(), 9)),
        "worker": len(gzip.compress((site / "sw.js").read_bytes(), 9)),
    }


def searched(site: Path) -> dict[str, Any]:
    """Ask the site's search in a slowed browser, then type into its page."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        found = measured(browser.new_page(), site)
        typing = typed(browser.new_page(), site)
        browser.close()
    return {**found, "typing": typing}


def grown(folder: Path, count: int, python: str) -> dict[str, Any]:
    """Measure a manual of this size."""
    write_project(folder, count)
    ours = [python, "-m", "underhoist"]
    check = best([run(*ours, "check", str(folder)) for _ in range(CHECKS)])
    build_it = (*ours, "build", str(folder), "--site", str(folder / "site"))
    build = best([built(folder, build_it) for _ in range(BUILDS)])
    again = best([rebuilt(folder, build_it) for _ in range(CHANGES)])
    settings, into = str(folder / "stock.yml"), str(folder / "stock")
    theirs = (python, "-m", "mkdocs", "build", "-q", "-f", settings, "-d", into)
    stock = tried(*theirs, patience=PATIENCE)
    return {
        "procedures": count,
        "check": asdict(check),
        "build": asdict(build),
        "again": asdict(again),
        "stock": asdict(stock) if stock else None,
        "stock_size": _size(folder / "stock") if stock else None,
        **weighed(folder / "site"),
        "search": searched(folder / "site"),
    }


def built(folder: Path, command: Sequence[str]) -> Took:
    """Build where nothing was built before."""
    for left in ("site", ".cache"):
        shutil.rmtree(folder / left, ignore_errors=True)
    return run(*command)


def rebuilt(folder: Path, command: Sequence[str]) -> Took:
    """Change one file and build."""
    with (folder / "pages" / CHANGED).open("a", encoding="utf-8") as page:
        page.write("\nLook twice.\n")
    return run(*command)


def _size(folder: Path) -> int:
    return sum(path.stat().st_size for path in folder.rglob("*") if path.is_file())


def rows(all_sizes: Sequence[dict[str, Any]]) -> Iterator[table.Row]:
    """Yield the lines of the table, size after size, then growth."""
    for each in all_sizes:
        yield from _of_size(each)
    smallest, largest = all_sizes[0], all_sizes[-1]
    if smallest is not largest:
        yield from _growth(smallest, largest)


def _of_size(each: dict[str, Any]) -> Iterator[table.Row]:
    of = f"{each['procedures']:,} procedures: "
    check, build, stock = (each[name] for name in ("check", "build", "stock"))
    ended = "" if stock else f" (the stock theme did not end within {PATIENCE // 60} minutes)"
    thousand = each["procedures"] == 1_000
    yield table.Row(
        what=f"{of}check, cold, processor", ours=check["cpu"], unit="s",
        reference=build["cpu"], against="build",
        budget="under 2 s and a tenth of the build" if thousand else "",
        held=check["cpu"] < 2 and check["cpu"] < build["cpu"] / 10 if thousand else None,
    )  # fmt: skip
    yield table.Row(what=f"{of}check, cold, by the clock", ours=check["wall"], unit="s")
    yield table.Row(
        what=f"{of}build, processor{ended}", ours=build["cpu"], unit="s",
        reference=stock and stock["cpu"], against="stock theme" if stock else "",
        budget="at most 1.25 times" if thousand else "",
        held=build["cpu"] <= 1.25 * stock["cpu"] if stock and thousand else None,
    )  # fmt: skip
    again = each["again"]
    for name, measure in (("processor", "cpu"), ("by the clock", "wall")):
        yield table.Row(
            what=f"{of}build after one changed file, {name}", ours=again[measure], unit="s",
            reference=build[measure], against="whole build",
            budget="at least 10 times faster" if thousand else "",
            held=10 * again[measure] <= build[measure] if thousand else None,
        )  # fmt: skip
    yield table.Row(
        what=f"{of}build, by the clock", ours=build["wall"], unit="s",
        reference=stock and stock["wall"], against="stock theme" if stock else "",
    )  # fmt: skip
    yield table.Row(
        what=f"{of}most memory of the build", ours=build["peak"], unit="MB",
        reference=stock and stock["peak"], against="stock theme" if stock else "",
    )  # fmt: skip
    yield table.Row(
        what=f"{of}site without the runtime, {each['files']:,} files", ours=each["site"] / 1e6,
        unit="MB", reference=each["stock_size"] and each["stock_size"] / 1e6,
        against="stock theme" if stock else "",
    )  # fmt: skip
    yield table.Row(
        what=f"{of}largest page, compressed ({each['largest_page']})",
        ours=each["largest"] / 1e3, unit="kB",
    )  # fmt: skip
    yield from search_rows(f"{of}slowed 4 times: ", each["index"], each["search"], None)
    yield table.Row(
        what=f"{of}slowed 4 times: longest task while somebody searches, median of three",
        ours=each["search"]["typing"], unit="ms", budget="at most 50 ms",
        held=each["search"]["typing"] <= 50,
    )  # fmt: skip


def _growth(small: dict[str, Any], large: dict[str, Any]) -> Iterator[table.Row]:
    """Compare the largest with the smallest: what may grow with the manual, and what may not."""
    times = large["procedures"] / small["procedures"]
    for name, words in (("check", "check"), ("build", "build")):
        yield table.Row(
            what=f"growth of the {words} for {times:g} times as many, processor",
            ours=large[name]["cpu"], unit="s", reference=small[name]["cpu"],
            against=f"{small['procedures']:,} procedures", budget=f"at most {times:g} times",
            held=large[name]["cpu"] <= times * small[name]["cpu"],
        )  # fmt: skip
    for key, words in (("same_page", "the same procedure"), ("front", "the front page")):
        yield table.Row(
            what=f"{words} at {large['procedures']:,} procedures, HTML compressed",
            ours=large[key] / 1e3, unit="kB", reference=small[key] / 1e3,
            against=f"at {small['procedures']:,}", budget="at most 1.05 times",
            held=large[key] <= 1.05 * small[key],
        )  # fmt: skip


def main() -> None:
    """Measure and write; exit with 1 where a budget is not held."""
    sizes = [int(each) for each in sys.argv[1:]] or list(SIZES)
    found = []
    with tempfile.TemporaryDirectory() as place:
        python = users_python(Path(place))
        for count in sizes:
            with tempfile.TemporaryDirectory() as scratch:
                found.append(grown(Path(scratch), count, python))
            print(json.dumps(found[-1]), flush=True)
    RESULTS.mkdir(exist_ok=True)
    (RESULTS / "scale.json").write_text(json.dumps(found, indent=1) + "\n", encoding="utf-8")
    sys.exit(not table.enter("scale", rows(found)))


if __name__ == "__main__":
    main()
