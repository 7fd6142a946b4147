"""Serves the preview: pages with their findings in them, and word of every change."""

import hashlib
from functools import partial
from http import HTTPStatus
from http.server import ThreadingHTTPServer
from pathlib import Path
from typing import override
from urllib.parse import parse_qs, unquote, urlsplit

from underhoist import theme
from underhoist.preview.now import Board
from underhoist.preview.panel import LIST
from underhoist.serving import HOST, Handler

OWN = "_preview/"
"""Below it is what only the preview has."""

BESIDE = ("cards/data/", "drafting/", "search/")
"""Folders of files that are made from many pages: they are made anew when they are asked for."""

PATIENCE = 15.0
"""Seconds after which a browser hears that nothing changed; so it is noticed when it has gone."""

_HEAD = (
    f'<link rel="stylesheet" href="/{OWN}preview.css">'
    f'<script type="module" src="/{OWN}follow.js"></script></head>'
)
_NO_PAGE = (
    '<!doctype html><html lang="en-GB"><head><title>Preview</title></head><body>'
    "<h1>There is no page here</h1></body></html>"
)


def server(board: Board, port: int) -> ThreadingHTTPServer:
    """Make a server of what hangs on the board; port 0 takes a free one, a taken one OSError."""
    made = ThreadingHTTPServer((HOST, port), partial(_PreviewHandler, board))
    made.daemon_threads = True
    return made


class _PreviewHandler(Handler):
    """Answers one browser."""

    def __init__(self, board: Board, *given: object) -> None:
        self.board = board
        super().__init__(*given, directory=str(board.now.root))  # type: ignore[arg-type]

    @override
    def do_GET(self) -> None:
        asked = urlsplit(self.path)
        path = unquote(asked.path).lstrip("/")
        if path == f"{OWN}changes":
            self._tell_changes(parse_qs(asked.query).get("page", ["/"])[0])
        elif path.startswith(OWN) and path != LIST:
            self._send_own(path.removeprefix(OWN))
        elif path in (LIST, "") or path.endswith(("/", ".html")):
            self._send_page(path)
        else:
            if path.startswith(BESIDE):
                self.board.now.write_beside()
            super().do_GET()

    @override
    def do_HEAD(self) -> None:
        self.do_GET()

    def _send_page(self, path: str) -> None:
        html, status = self._page(path)
        self._send(html.encode(), "text/html; charset=utf-8", status)

    def _page(self, path: str) -> tuple[str, HTTPStatus]:
        """Return the page with its findings in it."""
        board, status = self.board, HTTPStatus.OK
        if path == LIST:
            html = board.now.list_page()
        else:
            root = board.now.root
            file = (root / path / "index.html") if path.endswith("/") or not path else root / path
            inside = file.resolve().is_relative_to(root.resolve()) and file.is_file()
            if not inside:
                status, file = HTTPStatus.NOT_FOUND, root / "404.html"
            html = file.read_text(encoding="utf-8") if file.is_file() else _NO_PAGE
        html = html.replace("</head>", _HEAD, 1)
        return html.replace("</h1>", f"</h1>{board.line}{board.panels.get(path, '')}", 1), status

    def _send_own(self, name: str) -> None:
        file = theme.folder() / "assets" / "preview" / Path(name).name
        if file.is_file():
            self._send(file.read_bytes(), self.guess_type(str(file)), HTTPStatus.OK)
        else:
            self.send_error(HTTPStatus.NOT_FOUND)

    def _send(self, data: bytes, kind: str, status: HTTPStatus) -> None:
        self.send_response(status)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Length", str(len(data)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(data)

    def _tell_changes(self, page: str) -> None:
        """Send an event whenever this page reads otherwise, until the browser has gone."""
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", "text/event-stream")
        self.end_headers()
        path = unquote(urlsplit(page).path).lstrip("/")
        count, seen = self.board.count, self._mark(path)
        self._write_event(f"event: now\ndata: {seen}\n\n")
        while True:
            count = self.board.wait(count, PATIENCE)
            mark = self._mark(path)
            changed, seen = mark != seen, mark
            if not self._write_event(f"data: {mark}\n\n" if changed else ": nothing\n\n"):
                return

    def _mark(self, path: str) -> str:
        return hashlib.sha256(self._page(path)[0].encode()).hexdigest()[:16]

    def _write_event(self, event: str) -> bool:
        try:
            self.wfile.write(event.encode())
            self.wfile.flush()
        except OSError:  # the browser has gone
            return False
        return True
