"""`underhoist pack`: the manual, or a part of it, in one file."""

import sys
from pathlib import Path

import click

from underhoist.cli.choosing import choosing

PACKED, STOPPED, UNUSABLE = 0, 1, 2


@click.command()
@click.argument("project", metavar="[DIR]", default=".", type=click.Path(path_type=Path))
@choosing
@click.option(
    "-o", "--out", type=click.Path(path_type=Path, dir_okay=False), default="manual.html",
    show_default=True, help="The file to write.",
)  # fmt: skip
@click.option("--reading-only", is_flag=True, help="Without the calculators: a small file.")
@click.option("--address", default="", help="Where the manual's site is, for making job cards.")
def pack(  # noqa: PLR0913  # one for each option
    project: Path,
    families: tuple[str, ...],
    procedures: tuple[str, ...],
    left_out: tuple[str, ...],
    out: Path,
    *,
    reading_only: bool,
    address: str,
) -> None:
    """Write the manual of the project in DIR as one file, to hand over by cable or message.

    It opens in a browser without a server and without a network: pages, drawings, search,
    calculators and the next check of a complaint. Job cards are not in it, because a file has no
    safe place to keep a record. Exit code 0: written. 1: at least one finding stops it. 2: there is
    nothing to write, or something is missing that writing needs.
    """
    from underhoist.bound import Choice, chosen  # noqa: PLC0415  # help must not wait for it
    from underhoist.browser import tools  # noqa: PLC0415
    from underhoist.cli.handing import checked_source, failing_plainly, write_whole  # noqa: PLC0415
    from underhoist.pack import pack as packing  # noqa: PLC0415

    with failing_plainly():
        source = checked_source(project)
        choice = Choice(families=families, procedures=procedures, left_out=left_out)
        sheets = chosen(source.site, choice)
        made = packing(
            source.site, sheets, tools.node_modules(project.resolve() / "site"),
            address=address or source.address, calculators=not reading_only,
        )  # fmt: skip
        size = write_whole(out, made.content)
    with_what = "for reading only" if reading_only else "with the calculators"
    click.echo(f"{out} holds {made.pages} pages, {with_what}: {size / 1_000_000:.1f} MB.")
    sys.exit(PACKED)
