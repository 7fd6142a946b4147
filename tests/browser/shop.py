"""A shop's server that can be killed, and what a person does to exchange with it."""

from __future__ import annotations

import contextlib
import json
import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import urllib.request
from base64 import b64encode
from pathlib import Path

from card_hands import open_cards
from playwright.sync_api import expect

NODE = shutil.which("node", path=str(Path(sys.executable).parent)) or shutil.which("node")
SERVER = Path(__file__).with_name("shop_server.mjs")
LAST = re.compile(r"^Last exchanged at \d\d:\d\d; nothing waits\.$")
USER, PASSWORD = "phones", "pass word"


class Shop:
    """A server of the CouchDB protocol on a folder of its own, with one database for its phones."""

    def __init__(self, folder: Path, origin: str) -> None:
        self.folder, self.origin = folder, origin
        with socket.socket() as free:
            free.bind(("localhost", 0))
            self.port = free.getsockname()[1]
        self.address = f"http://localhost:{self.port}"
        self._running: subprocess.Popen[str] | None = None
        self.start()
        user = {"name": USER, "password": PASSWORD, "roles": [], "type": "user"}
        self._ask("PUT", f"_users/org.couchdb.user:{USER}", user)
        self._make()

    def empty(self) -> None:
        """Begin with a new database."""
        self._ask("DELETE", "cards")
        self._make()

    def _make(self) -> None:
        self._ask("PUT", "cards")
        members = {"names": [USER], "roles": []}
        self._ask("PUT", "cards/_security", {"admins": members, "members": members})

    def start(self) -> None:
        """Serve, on the same folder and at the same address as before."""
        command = [str(NODE), str(SERVER), str(self.folder), str(self.port), self.origin]
        # A group of its own: what is started may be a wrapper around the server.
        self._running = subprocess.Popen(
            command, stdout=subprocess.PIPE, text=True, start_new_session=True
        )
        assert self._running.stdout is not None
        assert self._running.stdout.readline().strip() == "ready"

    def kill(self) -> None:
        """Be gone at once, without a chance to write anything more."""
        assert self._running is not None
        with contextlib.suppress(ProcessLookupError):
            os.killpg(self._running.pid, signal.SIGKILL)
        self._running.wait()
        assert self._running.stdout is not None
        self._running.stdout.close()

    def documents(self) -> dict[str, dict[str, object]]:
        """Every document of the database by its id."""
        rows = self._ask("GET", "cards/_all_docs?include_docs=true")["rows"]
        return {row["id"]: row["doc"] for row in rows}

    def put(self, document: dict[str, object]) -> None:
        """Write a document as somebody else would."""
        self._ask("PUT", f"cards/{document['_id']}", document)

    def delete(self, document: dict[str, object]) -> None:
        """Delete a document as somebody else would."""
        self._ask("DELETE", f"cards/{document['_id']}?rev={document['_rev']}")

    def _ask(self, method: str, path: str, body: object = None):
        login = b64encode(b"boss:secret").decode()
        headers = {"Authorization": f"Basic {login}", "Content-Type": "application/json"}
        data = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(  # noqa: S310  (our own server)
            f"{self.address}/{path}", data, headers, method=method
        )
        with urllib.request.urlopen(request, timeout=20) as answer:  # noqa: S310
            return json.load(answer)


def join(page, site_url, shop, *, password=PASSWORD, keep=False):
    """Start the exchange as a person does, and wait until it has been tried once."""
    open_cards(page, site_url, "#sync")
    fill_in(page, shop.address, password=password, keep=keep)


def fill_in(page, address, *, password=PASSWORD, keep=False):
    """Fill in the form and send it."""
    page.get_by_label("Address of the server").fill(address)
    page.get_by_label("Database").fill("cards")
    page.get_by_label("User").fill(USER)
    page.get_by_label("Password", exact=False).first.fill(password)
    page.get_by_label("Keep the password on this phone").set_checked(keep)
    page.get_by_role("button", name="Start to exchange").click()


def state(page):
    """The line that says how the exchange stands."""
    return page.locator(".uh-card__left")


def is_exchanged(page, timeout=20_000):
    """Wait until everything of this phone is on the server."""
    expect(state(page)).to_have_text(LAST, timeout=timeout)
