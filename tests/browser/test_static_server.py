"""What the other tests take for granted of the server that they cut off."""

from __future__ import annotations

from contextlib import suppress
from socket import create_connection
from urllib.parse import urlsplit

from offline_hands import serve_instead
from static_server import StaticServer


def test_a_connection_made_ahead_of_need_ends_with_its_server(tmp_path):
    """Else a browser could be given the older of two sites after the newer one."""
    for name in ("older", "newer"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "page").write_text(name)
    server = StaticServer(tmp_path / "older")
    ahead = create_connection(("localhost", urlsplit(server.url).port))
    with create_connection(("localhost", urlsplit(server.url).port)) as other:
        other.sendall(b"GET /page HTTP/1.0\r\n\r\n")
        assert other.makefile("rb").read().endswith(b"older")  # both were taken up by now
    serve_instead(server, tmp_path / "newer")
    answered = b""
    with ahead, suppress(ConnectionError):
        ahead.sendall(b"GET /page HTTP/1.0\r\n\r\n")
        answered = ahead.recv(1000)
    assert answered == b""
    server.stop()
