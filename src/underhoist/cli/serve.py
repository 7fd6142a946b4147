"""`underhoist serve`: preview a manual while it is written."""

import sys
import tempfile
from pathlib import Path

import click

UNUSABLE = 2


@click.command()
@click.argument("project", metavar="[DIR]", default=".", type=click.Path(path_type=Path))
@click.option("--port", default=8322, show_default=True, type=click.IntRange(0, 65535))
def serve(project: Path, port: int) -> None:
    """Preview the manual of the project in DIR; the browser follows every change.

    What the check finds stands in its page and in the terminal. A page that cannot be read keeps
    its last good state. The preview is never stored for offline use.
    """
    from underhoist.preview import Preview  # noqa: PLC0415  # help must not wait for it
    from underhoist.project import Unusable  # noqa: PLC0415

    with tempfile.TemporaryDirectory(prefix="underhoist-") as folder:
        try:
            Preview(project, Path(folder), sys.stdout).run(port)
        except Unusable as problem:
            click.echo(str(problem), err=True)
            sys.exit(UNUSABLE)
        except OSError as problem:
            click.echo(
                f"The preview could not start: {problem.strerror}. Try another --port.", err=True
            )
            sys.exit(UNUSABLE)
