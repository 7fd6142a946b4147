"""`underhoist book`: the manual, or a part of it, as a book on A4."""

from pathlib import Path

import click

from underhoist.cli.choosing import choosing


@click.command()
@click.argument("project", metavar="[DIR]", default=".", type=click.Path(path_type=Path))
@choosing
@click.option(
    "-o", "--out", type=click.Path(path_type=Path, dir_okay=False), default="manual.pdf",
    show_default=True, help="The PDF to write.",
)  # fmt: skip
def book(
    project: Path,
    families: tuple[str, ...],
    procedures: tuple[str, ...],
    left_out: tuple[str, ...],
    out: Path,
) -> None:
    """Print the manual of the project in DIR as a book on A4, through Chromium.

    With contents and page numbers, all torques in one table, and a square to tick at each step.
    Exit code 0: written. 1: at least one finding stops it. 2: there is nothing to print, a name is
    wrong, or Chromium is missing.
    """
    from underhoist.book import book as printing  # noqa: PLC0415  # help must not wait for it
    from underhoist.bound import Choice, chosen  # noqa: PLC0415
    from underhoist.bound.headless import chromium  # noqa: PLC0415
    from underhoist.browser import tools  # noqa: PLC0415
    from underhoist.cli.handing import checked_source, failing_plainly, write_whole  # noqa: PLC0415

    with failing_plainly():
        chromium()  # said before the check is waited for
        site = checked_source(project).site
        choice = Choice(families=families, procedures=procedures, left_out=left_out)
        sheets = chosen(site, choice)
        manual = site.manual
        named = [manual.families[each].title.value for each in families]
        named += [manual.procedures[each].title.value for each in procedures]
        modules = tools.node_modules(project.resolve() / "site")
        made = printing(site, sheets, modules, subject="; ".join(named))
        write_whole(out, made.pdf)
    click.echo(f"{out} holds {made.pages} pages of the manual on {made.leaves} pages of paper.")
