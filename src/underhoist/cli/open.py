"""`underhoist open`: look at a finished site in a browser."""

import sys
import webbrowser
from pathlib import Path

import click

UNUSABLE = 2


@click.command(name="open")
@click.argument("site", metavar="[DIR]", default="site", type=click.Path(path_type=Path))
@click.option("--port", default=8321, show_default=True, type=click.IntRange(0, 65535))
@click.option("--browser/--no-browser", default=True, help="Open a browser at its front page.")
def open(site: Path, port: int, browser: bool) -> None:
    """Serve the finished site in DIR on this machine until Ctrl-C.

    Job cards belong to the address they were written at: keep to one port.
    """
    from underhoist.serving import HOST, server  # noqa: PLC0415  # help must not wait for it

    if not (site / "index.html").is_file():
        click.echo(f"{site}: there is no site here. Build one with `underhoist build`.", err=True)
        sys.exit(UNUSABLE)
    try:
        running = server(site, port)
    except OSError:
        click.echo(f"Port {port} is in use. Name another one with --port.", err=True)
        sys.exit(UNUSABLE)
    address = f"http://{HOST}:{running.server_port}/"
    click.echo(f"The manual is at {address} until you press Ctrl-C.")
    if browser:
        webbrowser.open(address)
    try:
        running.serve_forever()
    except KeyboardInterrupt:
        click.echo()
    finally:
        running.server_close()
