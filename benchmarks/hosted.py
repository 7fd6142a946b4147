"""A built site served as a static HTTPS host does it, with a certificate made for the run."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from threading import Thread
from typing import Self

import trustme

from underhoist.browser import tools

SCRIPT = Path(__file__).with_name("static_host.mjs")


class Host:
    """Serves a folder at `url` until the block ends."""

    def __init__(self, site: Path, scratch: Path) -> None:
        certificate, key = scratch / "certificate.pem", scratch / "key.pem"
        if not key.exists():
            made = trustme.CA().issue_cert("localhost")
            certificate.write_bytes(b"".join(part.bytes() for part in made.cert_chain_pems))
            made.private_key_pem.write_to_path(str(key))
        self.command = [tools.node(), str(SCRIPT), str(site), str(certificate), str(key)]
        self.asked: list[str] = []
        """Addresses of all requests, in order."""
        self.port = 0

    def __enter__(self) -> Self:
        pipe = subprocess.PIPE
        self._process = subprocess.Popen(self.command, stdin=pipe, stdout=pipe, text=True)
        self.port = int((self._process.stdout or sys.stdin).readline())
        Thread(target=self._listen, daemon=True).start()
        return self

    def __exit__(self, *_: object) -> None:
        if self._process.stdin:
            self._process.stdin.close()  # with its input it ends as well
        self._process.wait()

    @property
    def url(self) -> str:
        """Address of the front page. A name, not a number: service workers want localhost."""
        return f"https://localhost:{self.port}/"

    def _listen(self) -> None:
        for line in self._process.stdout or ():
            self.asked.append(line.strip())
