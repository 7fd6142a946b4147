"""`underhoist labels`: a sheet of labels that open pages of the manual on a phone."""

from pathlib import Path

import click


@click.command()
@click.argument("project", metavar="[DIR]", default=".", type=click.Path(path_type=Path))
@click.option("--procedure", "procedures", multiple=True, metavar="ID", help="A label for this.")
@click.option("--tool", "tools", multiple=True, metavar="ID", help="A label for this tool.")
@click.option("--family", "families", multiple=True, metavar="ID", help="A label for this family.")
@click.option("--address", default="", help="Front page of the manual's site, https://…")
@click.option(
    "-o", "--out", type=click.Path(path_type=Path, dir_okay=False), default="labels.pdf",
    show_default=True, help="A .pdf, or a .html to print from any browser.",
)  # fmt: skip
def labels(  # noqa: PLR0913, PLR0917  # one for each option
    project: Path,
    procedures: tuple[str, ...],
    tools: tuple[str, ...],
    families: tuple[str, ...],
    address: str,
    out: Path,
) -> None:
    """Write a sheet of labels with QR codes for the manual of the project in DIR.

    A label opens a procedure, a tool or a unit family on the manual's site; without a choice there
    is one for each. Exit code 0: written. 1: at least one finding stops it. 2: the site's address
    is not known, a name is wrong, or Chromium is missing.
    """
    from underhoist.bound.headless import printed  # noqa: PLC0415  # help must not wait for it
    from underhoist.browser import tools as browser_tools  # noqa: PLC0415
    from underhoist.cli.handing import checked_source, failing_plainly, write_whole  # noqa: PLC0415
    from underhoist.labels import Wanted, base_address, sheet  # noqa: PLC0415
    from underhoist.labels import labels as made_of  # noqa: PLC0415

    if out.suffix not in {".pdf", ".html"}:
        raise click.UsageError(f"{out}: the name must end in .pdf or .html.")
    with failing_plainly():
        source = checked_source(project)
        wanted = Wanted(procedures=procedures, tools=tools, families=families)
        base = base_address(address or source.address)
        made = made_of(source.site.manual, base, wanted)
        html = sheet(source.site, made, browser_tools.node_modules(project.resolve() / "site"))
        content = printed(html) if out.suffix == ".pdf" else html.encode("utf-8")
        write_whole(out, content)
    click.echo(f"{out} holds {len(made)} label{'' if len(made) == 1 else 's'}. Print it at 100 %.")
