"""`underhoist editor`: the language server that editors start."""

import click


@click.command()
def editor() -> None:
    """Talk to an editor over standard input and output, by the language server protocol.

    An editor starts this itself: it completes and explains the keys of the front matter, ids and
    references, and marks what the check finds while a page is written.
    """
    from underhoist.editor.server import server  # noqa: PLC0415  # help must not wait for it

    server.start_io()
