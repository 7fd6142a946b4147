"""The address that a label leads to."""

import re
from urllib.parse import SplitResult, urlsplit

from underhoist.project import Unusable

_LOCAL = {"localhost", "127.0.0.1", "::1"}

_UNFIT = re.compile(r'[\s"<>\\^`{|}]')
_HOST = re.compile(r"[\w.-]*[^\W_][\w.-]*|[0-9a-f:.]+")
"""A name, or a number as the address in brackets holds it."""

UNKNOWN = (
    "A label needs the address of the manual's site, and the settings give none. Give it with "
    "--address https://manual.example.org/, or write it into mkdocs.yml as site_url. It is on the "
    "labels for good: settle it first, and keep it for ever."
)


def base_address(given: str) -> str:
    """Return the site's address with a slash at its end.

    Raises Unusable where it is missing, or phones could not store the manual from it.
    """
    if not given.strip():
        raise Unusable(UNKNOWN)
    parts = _parts(given.strip())
    if parts is None:
        raise Unusable(f"{given}: this is no address.")
    host = parts.hostname
    if parts.scheme != "https" or not host or parts.query or parts.fragment or parts.username:
        raise Unusable(
            f"{given}: write the address of the front page, beginning with https://. Phones store "
            "a manual only from such an address."
        )
    if host in _LOCAL:
        raise Unusable(f"{given}: each phone takes this for itself. Write the server's name.")
    return parts._replace(path=parts.path.rstrip("/") + "/").geturl()


def _parts(address: str) -> SplitResult | None:
    """Take an address apart; None where a browser could not, or would make another of it."""
    try:
        parts = urlsplit(address)
        named = parts.hostname is None or _HOST.fullmatch(parts.hostname)
        _ = parts.port  # is read only here, and raises where it is no number of a port
    except ValueError:
        return None
    return parts if named and address.isprintable() and not _UNFIT.search(address) else None
