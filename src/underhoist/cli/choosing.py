"""The options by which a command takes all pages or some of them."""

from collections.abc import Callable

import click


def choosing[**P, R](command: Callable[P, R]) -> Callable[P, R]:
    """Add the options for a set of pages: `families`, `procedures` and `left_out`."""
    options = (
        click.option("--family", "families", multiple=True, metavar="ID",
                     help="Only this unit family and what is done on it. May be given again."),
        click.option("--procedure", "procedures", multiple=True, metavar="ID",
                     help="Only this procedure and what it names. May be given again."),
        click.option("--leave-out", "left_out", multiple=True, metavar="FOLDER",
                     help="Without the pages of this folder. May be given again."),
    )  # fmt: skip
    for option in reversed(options):
        command = option(command)
    return command
