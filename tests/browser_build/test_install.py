"""What a site holds after the phone side was added."""

from __future__ import annotations

import gzip
import hashlib
import json
import re

import pytest

from underhoist.browser import BrowserError, install, tools
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
    assert [file["url"] for file in files if "stored_sha256" in file] == [
        manifest_of(site)["image"]
    ]
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
    listed = json.loads((site / "offline" / "files.json").read_text(encoding="utf-8"))["urls"]
    assert {
        "index.html", "kestrel-3/set-band/index.html", "manifest.webmanifest",
        "runtime/manifest.json", "assets/vendor/idb.js", "assets/vendor/workbox-window.js",
        "assets/fonts/atkinson-hyperlegible-next-latin-wght-normal.woff2",
    } <= set(listed)  # fmt: skip
    assert [url for url in listed if re.match(r"runtime/[^/]+/|sitemap|sw\.js", url)] == []
    stored = re.findall(r'\burl:"([^"]+)"', (site / "sw.js").read_text(encoding="utf-8"))
    assert sorted(stored) == sorted([*listed, "offline/files.json"])
    assert report.pages == len(stored)


def test_the_service_worker_refuses_a_page_that_arrives_damaged(installed):
    site, _, _ = installed
    worker = (site / "sw.js").read_text(encoding="utf-8")
    assert worker.count('integrity:"sha256-') == worker.count('url:"')


def test_a_new_version_waits_for_consent(installed):
    site, _, _ = installed
    worker = (site / "sw.js").read_text(encoding="utf-8")
    # The one place where it may stop waiting is the message that the page sends on consent.
    assert worker.count("skipWaiting()") == 1
    assert re.search(r'"SKIP_WAITING"===?\w+\.data\.type&&self\.skipWaiting\(\)', worker)


def test_a_file_over_the_limit_fails_the_build_and_is_named(site):
    (site / "drawing.svg").write_bytes(b"x" * 3000)
    with pytest.raises(BrowserError) as raised:
        write_service_worker(site, tools.node_modules(site), largest=2000)
    said = str(raised.value)
    assert said.startswith("Some files would be missing offline, so nothing was built:\n")
    assert "drawing.svg is 3 kB, and won't be precached" in said
    assert "\n    at " not in said


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
