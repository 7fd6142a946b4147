"""Where our templates and the phone's modules are, and which files a site needs."""

from fnmatch import fnmatch
from importlib.resources import files
from pathlib import Path

SHEETS = tuple(
    f"assets/{name}.css"
    for name in ("underhoist", "calculator", "fault", "card", "drafting", "print")
)
"""The style sheets, in the order in which they count; `main.html` says which page has which."""

TEMPLATES = ("404.html", "search.html", *SHEETS)
"""Templates that become a file of their own."""

_OURS_LEFT_OUT = ("assets/styles/*", "partials/*", "assets/preview/*", "assets/pack/*")
"""Files of ours that only go into others, or that no site needs."""


def folder() -> Path:
    """Find the templates beside the sources, or inside the installed package."""
    package = Path(str(files("underhoist")))
    places = (package / "site_overrides", package.parent.parent / "site_overrides")
    return next((place for place in places if place.is_dir()), places[0])


def templates() -> tuple[str, ...]:
    """Name the templates that are there."""
    return tuple(name for name in TEMPLATES if (folder() / name).is_file())


def is_of_theme(folder: str) -> bool:
    """Whether a folder of templates is a theme's own: this file in it is what makes it one.

    We show nothing of it, and MkDocs would look at each of its 15,000 files, most of them icons.
    """
    return (Path(folder) / "mkdocs_theme.yml").is_file()


def wants(path: str, ours: bool) -> bool:
    """Whether a file belongs on the site: of the theme underneath none does."""
    return ours and not any(fnmatch(path, pattern) for pattern in _OURS_LEFT_OUT)
