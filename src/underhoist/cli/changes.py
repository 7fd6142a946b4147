"""`underhoist changes`: what is different between two states of a manual, in words."""

import sys
from pathlib import Path

import click

SAME, DIFFERENT, UNUSABLE = 0, 1, 2


@click.command()
@click.argument("old", metavar="OLD", type=click.Path(path_type=Path))
@click.argument("new", metavar="[NEW]", default=".", type=click.Path(path_type=Path))
def changes(old: Path, new: Path) -> None:
    """Tell what changed from OLD to NEW: torques and capacities first, then page by page.

    Each is the folder of a project, a built site, or the record of one. `underhoist changes site`
    tells what publishing the project in this folder would change. Exit code 0: nothing. 1: at
    least one difference. 2: one of them cannot be read.
    """
    from underhoist.history.between import between  # noqa: PLC0415  # help must not wait for it
    from underhoist.project import Unusable  # noqa: PLC0415

    try:
        lines = between(old, new)
    except Unusable as problem:
        click.echo(str(problem), err=True)
        sys.exit(UNUSABLE)
    if reconfigure := getattr(sys.stdout, "reconfigure", None):
        reconfigure(errors="backslashreplace")  # an old console lacks some letters
    click.echo("\n".join(lines) if lines else "Nothing has changed.")
    sys.exit(DIFFERENT if lines else SAME)
