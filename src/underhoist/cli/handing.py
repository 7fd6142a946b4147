"""What the commands that hand a manual over have in common."""

import os
import sys
from collections.abc import Generator
from contextlib import contextmanager
from pathlib import Path

import click
from attrs import frozen

from underhoist.bound import source
from underhoist.browser import BrowserError
from underhoist.pages import Site
from underhoist.plugin import NotBuiltError
from underhoist.project import Unusable
from underhoist.report import write

STOPPED, UNUSABLE = 1, 2


@frozen
class Checked:
    """A manual without a finding that stops."""

    site: Site
    address: str
    """Where its settings say that it is served, or ""."""


@contextmanager
def failing_plainly() -> Generator[None]:
    """End the command with one message and exit code 2 where something is missing or wrong."""
    try:
        yield
    except (Unusable, NotBuiltError, BrowserError) as problem:
        click.echo(str(problem), err=True)
        sys.exit(UNUSABLE)


def checked_source(project: Path) -> Checked:
    """Check the manual of a project; findings that stop are printed and end the command."""
    found = source(project)
    if found.site is None:
        write("text", found.checked, found.folder, sys.stdout)
        click.echo("Nothing was written.")
        sys.exit(STOPPED)
    return Checked(found.site, found.address)


def write_whole(out: Path, content: bytes) -> int:
    """Write a file whole or not at all, and return its size. Raises Unusable."""
    beside = out.with_name(f".{out.name}.{os.getpid()}.new")
    try:
        beside.write_bytes(content)
        beside.replace(out)
    except OSError as problem:
        beside.unlink(missing_ok=True)
        raise Unusable(f"{out} cannot be written: {problem.strerror}.") from None
    return len(content)
