"""`underhoist check`: print all that is wrong with a manual, or mend what needs no thought."""

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
@click.option("--mend", is_flag=True, help="Show the mends that need no thought, ask, make them.")
@click.option("--yes", is_flag=True, help="With --mend: make them without asking.")
def check(folder: Path, form: str, *, mend: bool, yes: bool) -> None:
    """Check the manual in DIR and print all that is wrong with it.

    DIR is a project with its mkdocs.yml, or the folder of the pages themselves. Exit code 0: the
    manual can be built. 1: at least one finding stops the build. 2: there is nothing to check.
    """
    from underhoist.uncollected import uncollected  # noqa: PLC0415  # help must not wait for it

    if mend and form != "text":
        raise click.UsageError("--mend speaks to people: leave --format out.")
    with uncollected():
        sys.exit(_check(folder, form, mend=mend, yes=yes))


def _check(folder: Path, form: str, *, mend: bool, yes: bool) -> int:
    """Check, print and return the exit code; what is needed is loaded only here."""
    from underhoist import check as checking  # noqa: PLC0415
    from underhoist.project import Unusable, pages_folder  # noqa: PLC0415
    from underhoist.report import write  # noqa: PLC0415

    if reconfigure := getattr(sys.stdout, "reconfigure", None):
        reconfigure(errors="backslashreplace")  # an old console lacks some letters
    try:
        pages = pages_folder(folder)
        if mend:
            _mend(pages, yes)
        checked = checking.check(pages)
    except Unusable as problem:
        click.echo(str(problem), err=True)
        return UNUSABLE
    write(form, checked, pages, sys.stdout)
    return STOPPED if checked.stops else CLEAN


def is_terminal() -> bool:
    """Whether somebody is there to answer."""
    return sys.stdin.isatty()


def _mend(pages: Path, yes: bool) -> None:
    """Show the mends, and make them where that is wanted. Raises Unusable."""
    from underhoist.mends import plan  # noqa: PLC0415
    from underhoist.mends.files import read_pages, write_pages  # noqa: PLC0415
    from underhoist.report.mends import write_plan  # noqa: PLC0415

    before, others = read_pages(pages)
    planned = plan(before, others)
    if not planned.mended:
        click.echo("No finding has a mend that needs no thought.\n")
        return
    write_plan(planned, before, pages, sys.stdout)
    if not yes and not is_terminal():
        click.echo("Nothing was changed. With --yes they are made.\n")
        return
    if not yes and not click.confirm("Make them?", default=False):
        click.echo("Nothing was changed.\n")
        return
    for file in write_pages(pages, before, planned.texts):
        click.echo(f"{file} was changed meanwhile and is left as it is.", err=True)
    click.echo("They are made. What is left:\n")
