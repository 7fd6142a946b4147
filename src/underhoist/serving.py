"""Serves a finished site on this machine only."""

from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

HOST = "127.0.0.1"
PORT = 8321
"""Always the same: a browser keeps job cards by address and port."""


class Handler(SimpleHTTPRequestHandler):
    """Files with the types that modules and WebAssembly need, whatever this machine's list says."""

    extensions_map = SimpleHTTPRequestHandler.extensions_map | {
        ".js": "text/javascript",
        ".mjs": "text/javascript",
        ".css": "text/css",
        ".json": "application/json",
        ".wasm": "application/wasm",
        ".webmanifest": "application/manifest+json",
        ".svg": "image/svg+xml",
        ".woff2": "font/woff2",
        ".whl": "application/zip",
    }

    def end_headers(self) -> None:
        """Have the browser ask again each time: the site may have been built anew."""
        self.send_header("Cache-Control", "no-cache")
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:
        """Nothing: one line a file would hide what matters."""


def server(site: Path, port: int = PORT) -> ThreadingHTTPServer:
    """Make a server of the folder; port 0 takes a free one, a taken one raises OSError."""
    return ThreadingHTTPServer((HOST, port), partial(Handler, directory=str(site)))
