"""Serves a finished site over HTTPS to the phones of one shop, from a PC in its office."""

import gzip
import ssl
from email.utils import formatdate
from functools import cache, partial
from http import HTTPStatus
from http.server import ThreadingHTTPServer
from io import BytesIO
from pathlib import Path
from typing import BinaryIO

from underhoist.policy import header
from underhoist.project import Unusable
from underhoist.serving import Handler

HEADERS = {
    "Content-Security-Policy": header(),
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}
"""What a host should say with every file; workers have only the policy that comes so."""

_SQUEEZED = frozenset({".html", ".js", ".mjs", ".css", ".json", ".svg", ".txt", ".wasm",
                       ".webmanifest", ".xml"})  # fmt: skip


class SharedHandler(Handler):
    """A site's files, packed where the browser takes that; no folder is listed."""

    protocol_version = "HTTP/1.1"
    timeout = 60
    server_version, sys_version = "Underhoist", ""

    def end_headers(self) -> None:
        """Say with every answer what HEADERS says."""
        for name, value in HEADERS.items():
            self.send_header(name, value)
        super().end_headers()

    def list_directory(self, path: str) -> BytesIO | None:  # type: ignore[override]
        """Answer that there is nothing: the manual's own lists lead to its pages."""
        del path
        self.send_error(HTTPStatus.NOT_FOUND)
        return None

    def send_head(self) -> BytesIO | BinaryIO | None:
        """Send a file packed, if that is asked for and helps; else as it is."""
        place = Path(self.translate_path(self.path))
        if place.is_dir() and self.path.partition("?")[0].endswith("/"):
            place /= "index.html"
        takes = "gzip" in self.headers.get("Accept-Encoding", "") and "Range" not in self.headers
        if not (takes and place.suffix in _SQUEEZED and place.is_file()):
            return super().send_head()
        changed = place.stat().st_mtime_ns
        content = _squeezed(place, changed)
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", self.guess_type(str(place)))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Vary", "Accept-Encoding")
        self.send_header("Content-Length", str(len(content)))
        self.send_header("Last-Modified", formatdate(changed / 1e9, usegmt=True))
        self.end_headers()
        return BytesIO(content)


@cache
def _squeezed(file: Path, changed: int) -> bytes:
    """Pack a file once for as long as it does not change."""
    del changed
    return gzip.compress(file.read_bytes(), 6, mtime=0)


class _SharingServer(ThreadingHTTPServer):
    """Shakes hands in each phone's own thread: one that stalls holds up no other."""

    daemon_threads = True

    def __init__(self, context: ssl.SSLContext, port: int, folder: Path) -> None:
        self._context = context
        super().__init__(("", port), partial(SharedHandler, directory=str(folder)))

    def finish_request(self, request: object, client_address: object) -> None:
        request.settimeout(SharedHandler.timeout)  # type: ignore[attr-defined]
        with self._context.wrap_socket(request, server_side=True) as safe:  # type: ignore[arg-type]
            super().finish_request(safe, client_address)  # type: ignore[arg-type]

    def handle_error(self, request: object, client_address: object) -> None:
        """Nothing: a phone that goes out of reach, or does not trust the certificate, hangs up."""


def sharing(site: Path, port: int, certificate: Path, key: Path) -> ThreadingHTTPServer:
    """Make the server; raises Unusable, or OSError where the port is taken or not allowed."""
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    for file in (certificate, key):
        if not file.is_file():
            raise Unusable(f"{file}: there is no such file.")
    try:
        context.load_cert_chain(certificate, key, password=_no_password)
    except (OSError, ValueError):  # SSLError is an OSError
        raise Unusable(
            f"{certificate} and {key} do not go together. The certificate is the file with the "
            "whole chain (often fullchain.pem), the key is its own key in PEM, without a password."
        ) from None
    return _SharingServer(context, port, site)


def _no_password() -> str:
    """Refuse a key with a password, instead of asking for it at the terminal."""
    return ""
