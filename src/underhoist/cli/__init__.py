"""The command `underhoist`. Each subcommand is loaded only when called: `check` starts fast."""

import os
from importlib import import_module
from importlib.util import find_spec
from typing import Any

import click

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # pint brings NumPy: its threads only wait here

COMMANDS = {
    "init": "underhoist.cli.init",
    "draft": "underhoist.cli.draft",
    "check": "underhoist.cli.check",
    "build": "underhoist.cli.build",
    "changes": "underhoist.cli.changes",
    "pack": "underhoist.cli.pack",
    "book": "underhoist.cli.book",
    "labels": "underhoist.cli.labels",
    "share": "underhoist.cli.share",
    "serve": "underhoist.cli.serve",
    "open": "underhoist.cli.open",
    "calc": "underhoist.cli.calc",
    "schema": "underhoist.cli.schema",
    "editor": "underhoist.cli.editor",
}
"""Subcommands, in the order of the help, and the module that has a command of that name."""

CUT_OFF = (
    "A file that the program reads ends too early ({0}). A full disk leaves such files: make room, "
    "delete the folders __pycache__ beside the program's modules, and run the command again."
)
"""What is said where reading met the end; a question that nobody answers never comes so far."""


class _Commands(click.Group):
    """Subcommands by name, each from its own module."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return [name for name, module in COMMANDS.items() if find_spec(module)]

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        module = COMMANDS.get(cmd_name)
        if module is None or find_spec(module) is None:
            return None
        return getattr(import_module(module), cmd_name)

    def invoke(self, ctx: click.Context) -> Any:  # noqa: ANN401  (as click has it)
        """Run a subcommand; click would call a file that is cut off "Aborted!", and no more."""
        try:
            return super().invoke(ctx)
        except EOFError as problem:
            why = str(problem) or "no reason given"
            raise click.ClickException(CUT_OFF.format(why)) from problem


@click.command(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="underhoist")
def main() -> None:
    """Check, build and serve a workshop manual, and calculate for it."""
