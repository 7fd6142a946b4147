"""A static server that tests can stop, count and make fail."""

from __future__ import annotations

import re
import sys
from collections import Counter
from contextlib import suppress
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from socket import SHUT_RDWR, socket
from threading import Event, Thread

LASTS = "max-age=86400"
"""For a folder in which nothing changes: to ask for its files again costs a sixth and more."""

_RANGE = re.compile(r"bytes=(\d+)-$")


class StaticServer:
    """Serves a folder at `url` until stopped; starting again keeps the address."""

    def __init__(self, folder: Path, keeping: str = "no-cache") -> None:
        self.folder = folder
        self.keeping = keeping
        """What a browser is told of keeping an answer; `LASTS` if no file changes.

        Without it, it asks for every file again, as a careful host wants it: a test never meets
        what the browser itself has kept.
        """
        self.requests: Counter[str] = Counter()
        self.ranges: list[str] = []
        self.cut_once: dict[str, int] = {}
        """End of an address to the number of bytes after which its connection breaks, once."""
        self.held: dict[str, Event] = {}
        """End of an address to what its answer waits for, a minute at most."""
        self.held_after: dict[str, int] = {}
        """The bytes that come before the wait, of an answer that is held."""
        self.headers: dict[str, str] = {}
        """Sent with every file."""
        self.is_replaced = False
        """Whether another folder was put in place: then no file counts as one that is known."""
        self._server: _Server | None = None
        self._port = 0
        self.start()

    @property
    def url(self) -> str:
        """Address of the front page. A name, not a number: service workers want localhost."""
        return f"http://localhost:{self._port}/"

    def start(self) -> None:
        """Serve, at the same address as before."""
        handler = partial(_Handler, self, directory=str(self.folder))
        self._server = _Server(("localhost", self._port), handler)
        self._server.daemon_threads = True
        self._port = self._server.server_address[1]
        Thread(target=self._server.serve_forever, args=(0.05,), daemon=True).start()

    def stop(self) -> None:
        """Be gone: connections are refused from now on, and those that stand are cut."""
        if self._server is not None:
            self._server.shutdown()
            self._server.server_close()
            self._server.cut_all()
            self._server = None


class _Server(ThreadingHTTPServer):
    """One that ends with its connections.

    A browser opens some ahead of need. One that outlived its server would be answered from the
    folder of before: an older version, when a newer one was on its way.
    """

    def __init__(self, *args: object) -> None:
        self._open: set[socket] = set()
        super().__init__(*args)  # pyright: ignore

    def process_request(self, request: socket, client_address: object) -> None:  # pyright: ignore
        self._open.add(request)
        super().process_request(request, client_address)  # pyright: ignore

    def shutdown_request(self, request: socket) -> None:  # pyright: ignore
        self._open.discard(request)
        super().shutdown_request(request)

    def cut_all(self) -> None:
        for request in self._open.copy():
            with suppress(OSError):  # its thread may be done with it
                request.shutdown(SHUT_RDWR)

    def handle_error(self, request: object, client_address: object) -> None:
        """A browser that hangs up in the middle of a file is nothing to be told."""
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)  # pyright: ignore


class _Handler(SimpleHTTPRequestHandler):
    extensions_map = {  # noqa: RUF012  (as the base class has it)
        **SimpleHTTPRequestHandler.extensions_map,
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
        ".webmanifest": "application/manifest+json",
        ".woff2": "font/woff2",
    }

    def __init__(self, owner: StaticServer, *args: object, **kwargs: object) -> None:
        self.owner = owner
        super().__init__(*args, **kwargs)  # pyright: ignore

    def do_GET(self) -> None:
        path = self.path.split("?")[0]
        self.owner.requests[path] += 1
        if self.owner.is_replaced:
            del self.headers["If-Modified-Since"]  # whole seconds, and two sites may be made in one
        if "Range" in self.headers:
            self._send_rest(self.headers["Range"])
            return
        for ending, size in list(self.owner.cut_once.items()):
            if path.endswith(ending):
                del self.owner.cut_once[ending]
                self._send_beginning(size)
                self.close_connection = True
                self.connection.close()
                return
        for ending, event in self.owner.held.items():
            if path.endswith(ending):
                self._wait_for(event, self.owner.held_after.get(ending, 0))
                return
        super().do_GET()

    def _wait_for(self, event: Event, sent: int) -> None:
        if not sent:
            event.wait(60)
            super().do_GET()
            return
        content = self._send_beginning(sent)
        event.wait(60)
        self.wfile.write(content[sent:])

    def _send_rest(self, wanted: str) -> None:
        self.owner.ranges.append(wanted)
        content = Path(self.translate_path(self.path)).read_bytes()
        start = int(_RANGE.match(wanted)[1])  # pyright: ignore
        self.send_response(206)
        self.send_header("Content-Range", f"bytes {start}-{len(content) - 1}/{len(content)}")
        self.send_header("Content-Length", str(len(content) - start))
        self.end_headers()
        self.wfile.write(content[start:])

    def _send_beginning(self, size: int) -> bytes:
        content = Path(self.translate_path(self.path)).read_bytes()
        self.send_response(200)
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        self.wfile.write(content[:size])
        self.wfile.flush()
        return content

    def end_headers(self) -> None:
        self.send_header("Cache-Control", self.owner.keeping)
        for name, value in self.owner.headers.items():
            self.send_header(name, value)
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:
        pass
