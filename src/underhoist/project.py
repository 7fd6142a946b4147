"""Finds the folder that holds the manual's pages, from a project's settings or as given."""

from pathlib import Path
from typing import Any, cast

SETTINGS = ("mkdocs.yml", "mkdocs.yaml")

USUAL_FOLDER = "docs"
"""Where the pages are when the settings do not say; MkDocs' own default."""


class Unusable(Exception):  # noqa: N818  # nothing went wrong in the program
    """There is nothing to check: no such folder, no pages, or settings that cannot be read."""


def pages_folder(given: Path) -> Path:
    """Find the pages of the project in this folder, or the folder itself where it is no project.

    Raises Unusable where there is no such folder or its settings cannot be read.
    """
    if not given.is_dir():
        what = "is a file, not a folder" if given.exists() else "there is no such folder"
        raise Unusable(f"{given}: {what}.")
    settings = next((given / name for name in SETTINGS if (given / name).is_file()), None)
    if settings is None:
        return given
    folder = given / (_docs_dir(settings) or USUAL_FOLDER)
    if not folder.is_dir():
        raise Unusable(f"{settings}: docs_dir names {folder}, and there is no such folder.")
    return folder


def _docs_dir(settings: Path) -> str | None:
    """Read `docs_dir` by events: the settings' tags and plugins are none of our business."""
    import yaml  # noqa: PLC0415  # only a project with settings needs it

    parse = cast("Any", yaml).parse
    try:
        text = settings.read_text(encoding="utf-8")
        depth, scalars = 0, list[str | None]()
        for event in parse(text, Loader=yaml.BaseLoader):
            opens = isinstance(event, yaml.MappingStartEvent | yaml.SequenceStartEvent)
            closes = isinstance(event, yaml.MappingEndEvent | yaml.SequenceEndEvent)
            if depth == 1 and not closes:
                scalars.append(event.value if isinstance(event, yaml.ScalarEvent) else None)
            depth += opens - closes
    except (OSError, UnicodeDecodeError, yaml.YAMLError) as error:
        line = " ".join(str(error).split())
        raise Unusable(f"{settings}: the settings cannot be read ({line}).") from None
    settled = dict(zip(scalars[::2], scalars[1::2], strict=False))
    return settled.get("docs_dir")
