"""What a site holds after the phone side was added."""

from __future__ import annotations

import gzip
import hashlib
import json
import re
from pathlib import Path

import pytest

from underhoist.browser import BrowserError, install, tools
from underhoist.browser.hashes import sha
from underhoist.browser.precache import write_service_worker


def manifest_of(site):
    return json.loads((site / "runtime" / "manifest.json").read_text(encoding="utf-8"))


def test_the_manifest_tells_the_truth_about_every_runtime_file(installed):
    site, report, _ = installed
    files = manifest_of(site)["files"]
    for file in files:
        content = (site / file["url"]).read_bytes()
        assert file["size"] == len(content)
        assert file["sha256"] == hashlib.sha256(content).hexdigest()
        if "stored_sha256" in file:
            unpacked = gzip.decompress(content)
            assert file["stored_sha256"] == hashlib.sha256(unpacked).hexdigest()
    core, image = manifest_of(site)["core"], manifest_of(site)["image"]
    program = f"{core}pyodide.asm.wasm"
    unpacked = {file["url"]: file.get("stored_url") for file in files if "stored_sha256" in file}
    assert unpacked == {f"{program}.bin": program, image: None}
    listed = {file["url"] for file in files}
    served = {
        path.relative_to(site).as_posix() for path in site.glob("runtime/*/*") if path.is_file()
    }
    assert listed == served
    assert report.runtime_bytes == sum(file["size"] for file in files)


def test_a_changed_text_leaves_every_runtime_address_as_it_was(installed, site):
    before = manifest_of(installed[0])
    page = site / "kestrel-3" / "set-band" / "index.html"
    page.write_text(page.read_text(encoding="utf-8") + "<p>One more sentence.", encoding="utf-8")
    install(site, progress=lambda _: None)
    assert manifest_of(site) == before


def test_pages_and_assets_are_stored_first_and_the_runtime_is_not(installed):
    site, report, _ = installed
    listed = files_listed(site)
    assert {
        "index.html", "kestrel-3/set-band/index.html", "manifest.webmanifest",
        "runtime/manifest.json", "assets/vendor/idb.js", "assets/vendor/workbox-window.js",
        "assets/fonts/atkinson-hyperlegible-next-latin-wght-normal.woff2",
    } <= set(listed)  # fmt: skip
    assert [url for url in listed if re.match(r"runtime/[^/]+/|sitemap|sw\.js", url)] == []
    assert report.pages == len(listed)
    assert report.text_bytes == sum(len((site / url).read_bytes()) for url in listed)


def files_listed(site):
    """Hash of each file by its address."""
    bundles = json.loads((site / "offline" / "files.json").read_text(encoding="utf-8"))["bundles"]
    return {path: hashed for bundle in bundles for path, _, hashed in bundle["files"]}


def test_every_file_stands_in_its_bundle_as_it_is_served_and_with_its_hash(installed):
    site, _, _ = installed
    bundles = json.loads((site / "offline" / "files.json").read_text(encoding="utf-8"))["bundles"]
    for bundle in bundles:
        packed = (site / bundle["url"]).read_bytes()
        assert hashlib.sha256(packed).hexdigest()[:32] == bundle["sha"]
        contents = [(site / path).read_bytes() for path, _, _ in bundle["files"]]
        assert gzip.decompress(packed) == b"".join(contents)
        assert [[len(each), sha(each)] for each in contents] == [
            [size, hashed] for _, size, hashed in bundle["files"]
        ]


def test_many_pages_go_into_few_bundles(site):
    for number in range(300):
        page = site / "pages" / str(number) / "index.html"
        page.parent.mkdir(parents=True)
        page.write_text(f"<h1>{number}</h1>" + "Turn it back. " * 1000, encoding="utf-8")
    stored = write_service_worker(site)
    assert stored.files == 303
    bundles = list((site / "offline" / "bundles").iterdir())
    assert 2 <= len(bundles) <= 4
    assert sum(bundle.stat().st_size for bundle in bundles) < stored.size / 20


def test_a_changed_page_changes_the_list_and_the_worker_and_an_unchanged_site_neither(site):
    def made():
        write_service_worker(site)
        return (site / "sw.js").read_text(encoding="utf-8"), files_listed(site)

    worker, listed = made()
    assert made() == (worker, listed)
    page = site / "index.html"
    page.write_text(page.read_text(encoding="utf-8") + "<p>New.", encoding="utf-8")
    newer, changed = made()
    assert newer != worker
    assert {path for path in changed if changed[path] != listed[path]} == {"index.html"}


def test_an_address_is_listed_as_a_browser_writes_it(site):
    (site / "a b é.txt").write_text("x", encoding="utf-8")
    write_service_worker(site)
    assert "a%20b%20%C3%A9.txt" in files_listed(site)


def test_the_worker_is_as_small_for_many_pages_as_for_few(installed):
    site, _, _ = installed
    worker = (site / "sw.js").read_text(encoding="utf-8")
    listed = (site / "offline" / "files.json").read_bytes()
    assert f'const VERSION = "{sha(listed)}"' in worker
    assert len(worker) < 20_000
    assert not re.search("__[A-Z]+__", worker)


def test_a_new_version_waits_for_consent(installed):
    site, _, _ = installed
    worker = (site / "sw.js").read_text(encoding="utf-8")
    # The one place where it may stop waiting is the message that the page sends on consent.
    assert worker.count("skipWaiting()") == 1
    assert 'if (data?.type === "SKIP_WAITING") await worker.skipWaiting();' in worker


def test_the_home_screen_name_is_the_front_page_and_only_real_icons_are_named(installed):
    site, _, _ = installed
    manifest = json.loads((site / "manifest.webmanifest").read_text(encoding="utf-8"))
    assert manifest["name"] == "Small & plain"
    assert manifest["short_name"] == "Manual"
    assert [icon["src"] for icon in manifest["icons"]] == ["assets/icons/icon-192.png"]
    assert (manifest["start_url"], manifest["scope"]) == ("./", "./")


def test_each_stage_is_told_and_the_summary_is_one_line(installed):
    _, report, said = installed
    assert said == [
        "Finding what the phone needs",
        "Compiling the calculators for the phone",
        "Adding the runtime, libraries and fonts",
        "Making the manual readable offline",
    ]
    assert re.fullmatch(
        r"\d+ files readable offline \(\d+\.\d MB\), calculators offline \(\d+\.\d MB\)",
        report.summary(),
    )


def test_missing_phone_side_packages_are_said_in_a_sentence(site, monkeypatch):
    monkeypatch.setattr(tools, "__file__", str(site / "elsewhere" / "tools.py"))
    with pytest.raises(BrowserError) as raised:
        install(site, progress=lambda _: None)
    assert str(raised.value) == (
        "The phone-side packages are not installed: run `make manual` once, it installs them."
    )


def test_a_tool_that_fails_says_which_step_and_what_it_said(tmp_path):
    missing = str(tmp_path / "missing.mjs")
    with pytest.raises(BrowserError, match=r"^Making a test fail did not work\.\n"):
        tools.run("Making a test fail", [tools.node(), missing])


def test_node_is_the_program_itself_and_not_the_command_that_starts_python_first():
    assert Path(tools.node()).read_bytes()[:2] != b"#!"
