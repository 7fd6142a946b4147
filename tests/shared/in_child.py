"""What a test lets a process of its own do, which can be killed; it starts with all imported."""

import multiprocessing
from multiprocessing.context import BaseContext
from pathlib import Path

from click.testing import CliRunner

from underhoist.cli import main

IMPORTED = ["click.testing", "underhoist.cli.check", "underhoist.checker", "underhoist.build"]
"""What takes long to import; this file is not found by the process that is copied."""


def quick_start() -> BaseContext:
    """Give what starts processes: copies of one that has imported this file, where there are such.

    Never copies of the test's own process, whose other threads may hold locks.
    """
    if "forkserver" not in multiprocessing.get_all_start_methods():
        return multiprocessing.get_context("spawn")
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload(IMPORTED)
    return context


def checked_as_json(folder: Path) -> tuple[int, str]:
    """Run `underhoist check --format json`; its exit code and what it printed.

    Raises what the command let through.
    """
    done = CliRunner().invoke(main, ["check", "--format", "json", str(folder)])
    if done.exception and not isinstance(done.exception, SystemExit):
        raise done.exception
    return done.exit_code, done.output
