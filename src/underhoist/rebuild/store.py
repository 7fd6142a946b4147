"""Keeps what a build made, signed: nothing is believed that this builder did not write itself."""

import hashlib
import hmac
import os
import pickle
import secrets
from contextlib import suppress
from pathlib import Path

from platformdirs import user_data_path

from underhoist.uncollected import uncollected

KEY = "build.key"
"""The secret of this user, in the folder for such data."""
_SIZE = 32


def place_of(project: Path, site: Path) -> Path:
    """Name the file of what is kept of a project's builds into a site's folder."""
    name = hashlib.sha256(os.fsencode(site)).hexdigest()[:16]
    return project / ".cache" / "underhoist" / f"{name}.kept"


def load(place: Path, made_by: str) -> object | None:
    """Return what was kept; None where it is not there, is damaged, or is from anybody else."""
    key = _key()
    if key is None:
        return None
    try:
        data = place.read_bytes()
    except OSError:
        return None
    body = memoryview(data)[_SIZE:]
    if not hmac.compare_digest(data[:_SIZE], _signature(key, made_by, body)):
        return None
    with uncollected():
        return pickle.loads(body)  # noqa: S301 - signed: it is our own


def save(place: Path, made_by: str, kept: object) -> None:
    """Keep it, whole or not at all. Raises OSError where it cannot be kept."""
    key = _key()
    if key is None:
        return
    with uncollected():
        body = pickle.dumps(kept, pickle.HIGHEST_PROTOCOL)
    making = place.with_suffix(".new")
    try:
        with making.open("wb") as file:
            file.write(_signature(key, made_by, body))
            file.write(body)
        making.replace(place)
    except OSError:
        with suppress(OSError):
            making.unlink()
        raise


def _signature(key: bytes, made_by: str, body: bytes | memoryview) -> bytes:
    return hmac.digest(key, made_by.encode() + hashlib.sha256(body).digest(), "sha256")


def _key() -> bytes | None:
    """Return the user's secret, made once; None where none can be kept."""
    place = user_data_path("underhoist", appauthor=False) / KEY
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        if not place.exists():
            _write_key(place)
        key = place.read_bytes()
    except OSError:
        return None
    return key if len(key) == _SIZE else None


def _write_key(place: Path) -> None:
    """Write a new secret that nobody else may read; one that appears meanwhile is taken instead."""
    making = place.with_name(f"{KEY}.{secrets.token_hex(8)}")
    with os.fdopen(os.open(making, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file:
        file.write(secrets.token_bytes(_SIZE))
    try:
        os.link(making, place)
    except FileExistsError:
        pass
    finally:
        making.unlink()
