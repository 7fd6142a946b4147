"""`underhoist check`: print everything that is wrong with a manual."""

import sys
from pathlib import Path

import click

FORMATS = ("text", "json", "github", "lines")

CLEAN, STOPPED, UNUSABLE = 0, 1, 2
"""Exit codes: nothing that stops, findings of severity stop, nothing to check."""


@click.command()
@click.argument("folder", metavar="[DIR]", default=".", type=click.Path(path_type=Path))
@click.option(
    "--format", "form", type=click.Choice(FORMATS), default="text", show_default=True,
    help="Text for people, JSON for programs, github for a hosted code review, lines for editors.",
)  # fmt: skip
def check(folder: Path, form: str) -> None:
    """Check the manual in DIR and print all that is wrong with it.

    DIR is a project with its mkdocs.yml, or the folder of the pages themselves. Exit code 0: the
    manual can be built. 1: at least one finding stops the build. 2: there is nothing to check.
    """
    from underhoist import check as checking  # noqa: PLC0415  # help must not wait for it
    from underhoist.project import Unusable, pages_folder  # noqa: PLC0415
    from underhoist.report import write  # noqa: PLC0415

    try:
        pages = pages_folder(folder)
        checked = checking.check(pages)
    except Unusable as problem:
        click.echo(str(problem), err=True)
        sys.exit(UNUSABLE)
    if reconfigure := getattr(sys.stdout, "reconfigure", None):
        reconfigure(errors="backslashreplace")  # an old console lacks some letters
    write(form, checked, pages, sys.stdout)
    sys.exit(STOPPED if checked.stops else CLEAN)
