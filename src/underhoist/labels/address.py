"""The address that a label leads to."""

from urllib.parse import urlsplit

from underhoist.project import Unusable

_LOCAL = {"localhost", "127.0.0.1", "::1"}

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
    try:
        parts = urlsplit(given.strip())
        host = parts.hostname
    except ValueError:
        raise Unusable(f"{given}: this is no address.") from None
    if parts.scheme != "https" or not host or parts.query or parts.fragment or parts.username:
        raise Unusable(
            f"{given}: write the address of the front page, beginning with https://. Phones store "
            "a manual only from such an address."
        )
    if host in _LOCAL:
        raise Unusable(f"{given}: each phone takes this for itself. Write the server's name.")
    return parts._replace(path=parts.path.rstrip("/") + "/").geturl()
