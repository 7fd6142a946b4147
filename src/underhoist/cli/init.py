"""`underhoist init`: begin a new manual."""

import sys
from pathlib import Path

import click

UNUSABLE = 2


@click.command()
@click.argument("folder", metavar="DIR", type=click.Path(path_type=Path))
@click.option("--name", default="Workshop manual", show_default=True, help="What it is called.")
def init(folder: Path, name: str) -> None:
    """Begin a new manual in the folder DIR, which is made if it is not there.

    It holds one invented example of each kind of page to change, and it builds as it is. A folder
    with files in it is refused: nothing is ever overwritten. Exit code 2: nothing was written.
    """
    from underhoist.start.new_manual import NotEmptyError, write_new  # noqa: PLC0415  # help first

    try:
        written = write_new(folder, " ".join(name.split()) or "Workshop manual")
    except (NotEmptyError, OSError) as problem:
        said = str(problem)
        if isinstance(problem, OSError):
            said = f"{problem.filename}: this cannot be written ({problem.strerror})."
        click.echo(said, err=True)
        sys.exit(UNUSABLE)
    pages = sum(file.startswith("procedures/") for file in written)
    click.echo(
        f"A new manual with {pages} pages is in {folder}. README.md there says how to go on."
    )
    click.echo("")
    if folder.resolve() != Path.cwd():
        click.echo(f"cd {_shown(folder)}")
    click.echo("underhoist check      reads every page and says what is wrong")
    click.echo("underhoist serve      shows the manual while you write")
    click.echo("underhoist build      makes the finished manual")
    click.echo("underhoist draft      asks, and writes a page to begin with")


def _shown(folder: Path) -> str:
    name = str(folder)
    return f'"{name}"' if " " in name else name
