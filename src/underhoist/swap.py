"""Puts a finished site in the place of the old one; whenever it stops, one whole site is there."""

import json
import shutil
from contextlib import suppress
from pathlib import Path

from underhoist.project import Unusable

MARK = "underhoist.json"
"""The file by which we know a folder as a site that we made and may replace."""


def fresh(site: Path) -> Path:
    """Make an empty folder beside the site to build in, after tidying what a crash left behind.

    Raises Unusable where the site's folder holds something else.
    """
    _tidy(site)
    if site.exists() and not (site / MARK).is_file() and not _is_empty(site):
        msg = f"{site} holds something that was not built here. Name another folder with --site."
        raise Unusable(msg)
    new = _beside(site, "new")
    new.mkdir(parents=True)
    return new


def mark(new: Path) -> None:
    """Sign the folder as ours."""
    (new / MARK).write_text(json.dumps({"made_by": "underhoist"}) + "\n", encoding="utf-8")


def swap(site: Path, spare: Path | None = None) -> None:
    """Put the new site in the place of the old one, and the old one away; or keep it as `spare`."""
    old = _beside(site, "old")
    if site.exists():
        site.rename(old)
    _beside(site, "new").rename(site)
    if spare:
        _keep(old, spare)
    _put_away(old)


def drop(site: Path) -> None:
    """Put an unfinished new site away."""
    shutil.rmtree(_beside(site, "new"), ignore_errors=True)


def _tidy(site: Path) -> None:
    """After a crash between the two renames the old site is still whole: put it back."""
    old = _beside(site, "old")
    if old.exists() and not (old / MARK).is_file() and not _is_empty(old):
        msg = f"{old} is in the way of the build and was not made by it. Move it elsewhere."
        raise Unusable(msg)
    if old.exists() and not site.exists():
        old.rename(site)
    _put_away(old)
    drop(site)


def _keep(old: Path, spare: Path) -> None:
    """Move a site elsewhere; it stays where that does not work, as on another disk."""
    with suppress(OSError):
        shutil.rmtree(spare, ignore_errors=True)
        old.rename(spare)


def _put_away(old: Path) -> None:
    """Delete the old site, its mark last: what a crash leaves of it is still known as ours."""
    with suppress(OSError):  # somebody has a file of it open: the next build tries again
        for each in old.iterdir():
            if each.is_dir():
                shutil.rmtree(each)
            elif each.name != MARK:
                each.unlink()
        (old / MARK).unlink(missing_ok=True)
        old.rmdir()


def _beside(site: Path, ending: str) -> Path:
    return site.with_name(f"{site.name}.underhoist-{ending}")


def _is_empty(folder: Path) -> bool:
    return folder.is_dir() and next(folder.iterdir(), None) is None
