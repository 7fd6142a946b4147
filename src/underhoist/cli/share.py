"""`underhoist share`: the finished site for the phones of a shop, from a PC in its office."""

import sys
from pathlib import Path

import click

UNUSABLE = 2


@click.command()
@click.argument("site", metavar="[DIR]", default="site", type=click.Path(path_type=Path))
@click.option("--certificate", required=True, type=click.Path(path_type=Path),
              help="The certificate with its whole chain, in PEM.")  # fmt: skip
@click.option("--key", required=True, type=click.Path(path_type=Path), help="Its key, in PEM.")
@click.option("--port", default=443, show_default=True, type=click.IntRange(0, 65535))
def share(site: Path, certificate: Path, key: Path, port: int) -> None:
    """Serve the finished site in DIR over HTTPS to the phones on this network until Ctrl-C.

    Phones store a manual only from an address whose certificate they trust without a warning, and
    keep what they record under that address: keep its name and port for ever. Exit code 2: there
    is no site, the certificate does not fit its key, or the port cannot be had.
    """
    from underhoist.project import Unusable  # noqa: PLC0415  # help must not wait for it
    from underhoist.share import sharing  # noqa: PLC0415

    if not (site / "index.html").is_file():
        click.echo(f"{site}: there is no site here. Build one with `underhoist build`.", err=True)
        sys.exit(UNUSABLE)
    try:
        running = sharing(site, port, certificate, key)
    except Unusable as problem:
        click.echo(str(problem), err=True)
        sys.exit(UNUSABLE)
    except PermissionError:
        click.echo(f"Port {port} is for the administrator. Try --port 8443.", err=True)
        sys.exit(UNUSABLE)
    except OSError as problem:
        click.echo(f"Port {port} cannot be had: {problem.strerror}. Try another --port.", err=True)
        sys.exit(UNUSABLE)
    ending = "" if running.server_port == 443 else f":{running.server_port}"
    click.echo(f"The manual is at https://<name on the certificate>{ending}/ until Ctrl-C.")
    try:
        running.serve_forever()
    except KeyboardInterrupt:
        click.echo()
    finally:
        running.server_close()
