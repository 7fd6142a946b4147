"""The small files that let editors help with the front matter.

A YAML language server does not look inside Markdown, so a schema alone helps nobody. Visual Studio
Code without any extension offers our snippets, made from the model, and marks what the check finds
when its task runs. Neovim and Helix start our own language server.
"""

import json
from pathlib import Path
from typing import Any

from underhoist.model import Manual
from underhoist.schema import json_schema, known_ids
from underhoist.start.snippets import snippets

type Json = dict[str, Any]

LINE = r"^(.+?):(\d+):(\d+): (error|warning): (.*) \[([a-z-]+)\]$"
"""A line of `underhoist check --format lines`."""

_NEOVIM = """\
-- Neovim 0.11 or later, with `:set exrc` once in your own settings.
vim.lsp.config("underhoist", {
  cmd = { "underhoist", "editor" },
  filetypes = { "markdown" },
  root_markers = { "mkdocs.yml" },
})
vim.lsp.enable("underhoist")
"""
_HELIX = """\
[language-server.underhoist]
command = "underhoist"
args = ["editor"]

[[language]]
name = "markdown"
language-servers = ["underhoist"]
"""


def editor_files(manual: Manual) -> dict[str, str]:
    """Return every file by its path in the project's folder."""
    known = known_ids(manual)
    return {
        ".vscode/settings.json": _json(_SETTINGS),
        ".vscode/tasks.json": _json(_TASKS),
        ".vscode/underhoist.code-snippets": _json(snippets(known)),
        ".nvim.lua": _NEOVIM,
        ".helix/languages.toml": _HELIX,
        "front-matter.schema.json": _json(json_schema(known)),
    }


def _json(content: Json) -> str:
    return json.dumps(content, ensure_ascii=False, indent=2) + "\n"


_SETTINGS: Json = {
    "[markdown]": {
        "editor.quickSuggestions": {"other": True, "comments": True, "strings": True},
        "editor.wordBasedSuggestions": "off",
        "editor.tabSize": 2,
        "editor.insertSpaces": True,
    },
    "files.exclude": {"site": True},
    "files.eol": "\n",
}
"""Markdown has suggestions switched off until somebody asks for them."""

_TASKS: Json = {
    "version": "2.0.0",
    "tasks": [
        {
            "label": "Check the manual",
            "type": "shell",
            "command": "underhoist check --format lines",
            "group": {"kind": "build", "isDefault": True},
            "presentation": {"reveal": "silent", "clear": True},
            "problemMatcher": {
                "owner": "underhoist",
                "fileLocation": ["relative", "${workspaceFolder}"],
                "pattern": {
                    "regexp": LINE,
                    "file": 1, "line": 2, "column": 3, "severity": 4, "message": 5, "code": 6,
                },
            },
        },
        {
            "label": "Show the manual while I write",
            "type": "shell",
            "command": "underhoist serve",
            "isBackground": True,
            "problemMatcher": [],
        },
        {
            "label": "Draft a page",
            "type": "shell",
            "command": "underhoist draft",
            "presentation": {"focus": True},
            "problemMatcher": [],
        },
    ],
}  # fmt: skip
"""Ctrl-Shift-B runs the check; what it finds stands in the list of problems and in the text."""


def write_editor_files(folder: Path, manual: Manual) -> tuple[str, ...]:
    """Write the files of ours into a project again, and return them.

    Files that an author may have changed (settings, tasks) stay where they are there already.
    """
    written: list[str] = []
    for file, text in editor_files(manual).items():
        path = folder / file
        if path.exists() and file not in _MADE:
            continue
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="\n")
        written.append(file)
    return tuple(written)


_MADE = frozenset({".vscode/underhoist.code-snippets", "front-matter.schema.json"})
"""Files that hold the manual's ids: nobody writes in them by hand."""
