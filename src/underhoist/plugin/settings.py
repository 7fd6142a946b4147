"""The settings in mkdocs.yml, and what of them decides how a page comes out."""

# pyright: reportUnknownMemberType=false, reportUnknownVariableType=false
# MkDocs' own types are partial.

import logging
import os
import re
from pathlib import Path

from mkdocs.config import load_config
from mkdocs.config.base import Config
from mkdocs.config.config_options import Type
from mkdocs.config.defaults import MkDocsConfig


class NotBuiltError(Exception):
    """No site could be made; the text says why."""


class Settings(Config):
    """What the plugin may be told in mkdocs.yml."""

    demo = Type(bool, default=False)
    """Whether the figures are invented: every page then says so."""


def load(settings: Path, into: Path) -> MkDocsConfig:
    """Read the settings; raises MkDocs' Abort or ConfigurationError where they are refused."""
    os.environ["NO_MKDOCS_2_WARNING"] = "1"  # a notice of the theme's makers, at every build
    return load_config(str(settings), site_dir=str(into))


def all_settings(config: MkDocsConfig) -> str:
    """Return all settings that a page comes out by; "" where not all stand in their file."""
    if list(config.plugins) != ["underhoist"] or config.hooks or config.theme.custom_dir:
        return ""
    text = Path(config.config_file_path or "").read_text(encoding="utf-8")
    return "" if re.search(r"\bINHERIT\b|!\w", text) else text


def is_plain(config: MkDocsConfig) -> bool:
    """Whether every page that is made is written, each into a folder of its own."""
    others = config.exclude_docs or config.draft_docs or config.extra_templates
    return bool(config.use_directory_urls) and not others


def quiet() -> list[str]:
    """Keep MkDocs from printing; its warnings are returned as they come."""
    lines: list[str] = []
    keeper = logging.Handler(logging.WARNING)
    keeper.emit = lambda record: lines.append(record.getMessage())
    for name in ("mkdocs", "properdocs"):  # the second is what its maintained fork is called
        logger = logging.getLogger(name)
        logger.handlers[:] = [keeper]
        logger.propagate = False
    return lines
