"""`underhoist build`: check a manual and build its site."""

import gc
import sys
from pathlib import Path

import click

BUILT, STOPPED, UNUSABLE = 0, 1, 2


@click.command()
@click.argument("project", metavar="[DIR]", default=".", type=click.Path(path_type=Path))
@click.option(
    "--site", type=click.Path(path_type=Path), default=None,
    help="Folder for the site; without it, the folder site in DIR.",
)  # fmt: skip
@click.option(
    "--since", type=click.Path(path_type=Path, exists=True), default=None,
    help="Site or record of the build to compare with; without it, the old site.",
)  # fmt: skip
@click.option("--afresh", is_flag=True, help="Take nothing over from the build before.")
def build(project: Path, site: Path | None, since: Path | None, afresh: bool) -> None:
    """Check the manual of the project in DIR, build its site and tell what changed.

    The old site stays until the new one is complete. Exit code 0: built. 1: at least one finding
    stops the build. 2: there is nothing to build, or something is missing that building needs.
    """
    from underhoist.uncollected import uncollected  # noqa: PLC0415  # help must not wait for it

    with uncollected():
        from underhoist import build as building  # noqa: PLC0415
        from underhoist.browser import BrowserError  # noqa: PLC0415
        from underhoist.cli.told import Told, summary  # noqa: PLC0415
        from underhoist.plugin import NotBuiltError  # noqa: PLC0415
        from underhoist.project import Unusable  # noqa: PLC0415
        from underhoist.report import write  # noqa: PLC0415

    place = (site or project / "site").resolve()
    try:
        with Told() as told:
            built = building.build(project, place, told, since=since, afresh=afresh)
    except (Unusable, NotBuiltError, BrowserError) as problem:
        click.echo(str(problem), err=True)
        sys.exit(UNUSABLE)
    except OSError as problem:  # a full disk, a folder that may not be written
        where = problem.filename or place
        click.echo(f"{where} cannot be written: {problem.strerror}. The old site stays.", err=True)
        sys.exit(UNUSABLE)
    if built.checked.findings:
        write("text", built.checked, built.pages, sys.stdout)
    if built.site is None:
        click.echo("No site was built. An older one, if there is one, is as it was.")
        sys.exit(STOPPED)
    click.echo(summary(built))
    gc.freeze()  # the program ends: nobody needs to look through all of it once more
