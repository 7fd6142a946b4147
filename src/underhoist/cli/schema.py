"""`underhoist schema`: the front matter as JSON Schema, and the files that editors use."""

import json
import sys
from pathlib import Path

import click

UNUSABLE = 2


@click.command()
@click.argument("project", metavar="[DIR]", required=False, type=click.Path(path_type=Path))
@click.option(
    "--editors", is_flag=True, help="Write the editors' files in DIR anew, with the ids of today."
)
def schema(project: Path | None, editors: bool) -> None:
    """Print the JSON Schema of every kind of front matter.

    With DIR the ids that its manual knows are the only ones allowed. Exit code 2: there is no
    manual in DIR.
    """
    from underhoist.check import check  # noqa: PLC0415  # help must not wait for it
    from underhoist.project import Unusable, pages_folder  # noqa: PLC0415
    from underhoist.schema import json_schema, known_ids  # noqa: PLC0415
    from underhoist.start.editor_files import write_editor_files  # noqa: PLC0415

    if project is None and not editors:
        click.echo(json.dumps(json_schema(), ensure_ascii=False, indent=2))
        return
    folder = project or Path()
    try:
        manual = check(pages_folder(folder)).manual
    except Unusable as problem:
        click.echo(str(problem), err=True)
        sys.exit(UNUSABLE)
    if editors:
        for file in write_editor_files(folder, manual):
            click.echo(f"Written: {folder / file}")
        return
    click.echo(json.dumps(json_schema(known_ids(manual)), ensure_ascii=False, indent=2))
