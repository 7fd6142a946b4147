"""The shop's own server: headers, packing, no lists, and a phone that trusts its certificate."""

import base64
import gzip
import hashlib
import http.client
import socket
import ssl
from threading import Thread

import pytest
import trustme
from chromium import CHROMIUM, QUIET
from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat
from cryptography.x509 import load_pem_x509_certificate

from underhoist.policy import header
from underhoist.project import Unusable
from underhoist.share import sharing

PAGE = "<!doctype html><title>Quay</title>" + "<p>Text of the page.</p>" * 40


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    folder = tmp_path_factory.mktemp("shared")
    (folder / "site" / "drawings").mkdir(parents=True)
    (folder / "site" / "index.html").write_text(PAGE)
    (folder / "site" / "sw.js").write_text("addEventListener('fetch', () => {});")
    (folder / "site" / "core.wasm").write_bytes(b"\0asm" * 200)
    (folder / "site" / "drawings" / "a.png").write_bytes(b"\x89PNG")
    (folder / "secret.txt").write_text("no")
    return folder


@pytest.fixture(scope="module")
def certificate(files):
    authority = trustme.CA()
    own = authority.issue_cert("localhost")
    own.private_key_pem.write_to_path(files / "key.pem")
    chain = b"".join(each.bytes() for each in own.cert_chain_pems)
    (files / "chain.pem").write_bytes(chain)
    return authority


@pytest.fixture(scope="module")
def port(files, certificate):
    running = sharing(files / "site", 0, files / "chain.pem", files / "key.pem")
    Thread(target=running.serve_forever, args=(0.05,), daemon=True).start()
    yield running.server_port
    running.shutdown()
    running.server_close()


@pytest.fixture
def ask(port, certificate):
    trusted = ssl.create_default_context()
    certificate.configure_trust(trusted)

    def asked(path, **headers):
        connection = http.client.HTTPSConnection("localhost", port, context=trusted, timeout=10)
        connection.request("GET", path, headers=headers)
        answer = connection.getresponse()
        content = answer.read()
        connection.close()
        return answer, content

    return asked


def test_a_page_comes_packed_with_the_headers_of_a_careful_host(ask):
    answer, content = ask("/", **{"Accept-Encoding": "gzip"})
    assert gzip.decompress(content).decode() == PAGE
    assert answer.headers["Content-Type"] == "text/html"
    assert answer.headers["Cache-Control"] == "no-cache"
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert answer.headers["Content-Security-Policy"] == header()
    assert answer.headers["Vary"] == "Accept-Encoding"


def test_it_comes_as_it_is_where_packing_is_not_asked_for(ask):
    answer, content = ask("/")
    assert content.decode() == PAGE
    assert "Content-Encoding" not in answer.headers


def test_webassembly_has_its_type(ask):
    assert ask("/core.wasm")[0].headers["Content-Type"] == "application/wasm"


@pytest.mark.parametrize(
    "path", ["/drawings/", "/none", "/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt"]
)
def test_no_folder_is_listed_and_nothing_beside_the_site_is_given(ask, path):
    answer, content = ask(path)
    assert answer.status == 404
    assert b"secret" not in content
    assert b"a.png" not in content


def test_whoever_stalls_holds_up_nobody(ask, port):
    with socket.create_connection(("localhost", port)):
        assert ask("/")[0].status == 200


def test_a_phone_without_the_authority_gets_nothing(port):
    connection = http.client.HTTPSConnection("localhost", port, timeout=10)
    with pytest.raises(ssl.SSLCertVerificationError):
        connection.request("GET", "/")


def test_a_key_of_another_certificate_is_refused(files, certificate):
    other = files / "other.pem"
    certificate.issue_cert("elsewhere").private_key_pem.write_to_path(other)
    with pytest.raises(Unusable, match="do not go together"):
        sharing(files / "site", 0, files / "chain.pem", other)
    with pytest.raises(Unusable, match="there is no such file"):
        sharing(files / "site", 0, files / "none.pem", other)


@pytest.mark.browser
def test_a_service_worker_registers_where_the_certificate_is_trusted(browser_type, files, port):
    """Trusted here by its public key; a warning that was clicked away is not trust."""
    key = load_pem_x509_certificate((files / "chain.pem").read_bytes()).public_key()
    spki = key.public_bytes(Encoding.DER, PublicFormat.SubjectPublicKeyInfo)
    trusted = base64.b64encode(hashlib.sha256(spki).digest()).decode()
    register = "navigator.serviceWorker.register('sw.js').then(() => 'yes', (error) => error.name)"
    for flags, said in (([f"--ignore-certificate-errors-spki-list={trusted}"], "yes"), ([], None)):
        found = {"executable_path": CHROMIUM} if CHROMIUM else {}
        browser = browser_type.launch(**found, args=[*QUIET, *flags])
        page = browser.new_page(ignore_https_errors=not flags)
        page.goto(f"https://localhost:{port}/")
        answer = page.evaluate(register)
        browser.close()
        assert answer == said if said else answer != "yes"
