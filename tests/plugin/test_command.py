"""`underhoist build`, `open` and `serve` as they are typed."""

import os
import re
import signal
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

import pytest
from click.testing import CliRunner
from underhoist_calculators import all_calculators

from underhoist.cli.build import build
from underhoist.cli.open import open as open_command
from underhoist.cli.serve import serve
from underhoist.serving import server


def run(command, *words):
    return CliRunner().invoke(command, [str(word) for word in words])


def test_build_says_what_the_site_holds_and_how_to_open_it_and_nothing_else(project):
    """MkDocs, its theme and the theme's makers would have a word to say."""
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": ""}
    command = [sys.executable, "-m", "underhoist", "build", "."]
    done = subprocess.run(
        command, capture_output=True, text=True, check=False, env=environment, cwd=project.folder
    )
    assert (done.returncode, done.stderr) == (0, ""), done.stdout
    lines = done.stdout.splitlines()
    assert lines[0] == (
        "The site holds 3 procedures, 1 unit family, "
        f"{len(all_calculators())} calculators and 21 cross-links."
    )
    assert lines[1] == "The check read 12 pages: nothing found."
    assert lines[2].startswith("On a phone: ")
    command = Path(sys.executable).with_name("underhoist")
    assert lines[3:] == [
        "There is no earlier build to compare with.",
        f"To open it: {command} open site",
    ]
    assert (project.site / "index.html").is_file()


def test_build_prints_every_finding_and_exits_1(project):
    project.replace("jobs/set-band.md", "torque:band-seat>", "torque:band-set>")
    done = run(build, project.folder)
    assert done.exit_code == 1
    assert "dead-reference" in done.output
    assert "Did you mean band-seat?" in done.output
    assert done.output.endswith("No site was built. An older one, if there is one, is as it was.\n")
    assert not project.site.exists()


@pytest.mark.parametrize(
    ("folder", "said"),
    [("nowhere", "nowhere: there is no mkdocs.yml here"), ("pages", "there is no mkdocs.yml here")],
)
def test_nothing_to_build_exits_2_in_one_line(project, folder, said):
    done = run(build, project.folder / folder)
    assert done.exit_code == 2
    assert said in done.output
    assert len(done.output.splitlines()) == 1


def test_open_says_where_there_is_no_site(tmp_path):
    done = run(open_command, tmp_path)
    assert done.exit_code == 2
    assert done.output == f"{tmp_path}: there is no site here. Build one with `underhoist build`.\n"


def test_open_says_that_a_port_is_taken(built):
    running = server(built.site, 0)
    try:
        done = run(open_command, built.site, "--port", running.server_port, "--no-browser")
    finally:
        running.server_close()
    assert done.exit_code == 2
    assert done.output == f"Port {running.server_port} is in use. Name another one with --port.\n"


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("a.wasm", "application/wasm"),
        ("a.mjs", "text/javascript"),
        ("a.js", "text/javascript"),
        ("a.webmanifest", "application/manifest+json"),
        ("a.json", "application/json"),
        ("a.woff2", "font/woff2"),
        ("a.svg", "image/svg+xml"),
    ],
)
def test_files_are_served_with_the_type_a_browser_wants(tmp_path, name, kind):
    from threading import Thread

    (tmp_path / name).write_bytes(b"x")
    running = server(tmp_path, 0)
    Thread(target=running.serve_forever, daemon=True).start()
    try:
        with urllib.request.urlopen(f"http://127.0.0.1:{running.server_port}/{name}") as answer:
            assert answer.headers["Content-Type"] == kind
    finally:
        running.shutdown()
        running.server_close()


def test_serve_says_where_there_is_no_project(tmp_path):
    done = run(serve, tmp_path)
    assert done.exit_code == 2
    assert (
        done.output
        == f"{tmp_path}: there is no mkdocs.yml here, so it is not known what to build.\n"
    )


def read(port):
    address = f"http://127.0.0.1:{port}/jobs/set-band/"
    with urllib.request.urlopen(address, timeout=10) as answer:
        return answer.read().decode()


def until(true, seconds=120):
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        try:
            if true():
                return True
        except OSError:
            pass
        time.sleep(0.1)
    return False


def test_preview_follows_changes_and_keeps_the_last_good_state(project, tmp_path):
    free = server(Path(tmp_path), 0)
    port = free.server_port
    free.server_close()
    log = tmp_path / "preview.log"
    command = [sys.executable, "-u", "-m", "underhoist", "serve", str(project.folder)]
    with log.open("w") as out:
        preview = subprocess.Popen([*command, "--port", str(port)], stdout=out, stderr=out)
    try:
        assert until(lambda: "Wipe the case." in read(port)), log.read_text()
        project.replace("jobs/set-band.md", "Wipe the case.", "Polish the case.")
        assert until(lambda: "Polish the case." in read(port)), log.read_text()
        project.replace("jobs/set-band.md", "torque:band-seat>", "torque:band-set>")
        assert until(lambda: "Did you mean band-seat?" in log.read_text()), log.read_text()
        assert "Polish the case." in read(port)
        project.replace("jobs/set-band.md", "torque:band-set>", "torque:band-seat>")
        project.replace("jobs/set-band.md", "Polish the case.", "Clean the case.")
        assert until(lambda: "Clean the case." in read(port)), log.read_text()
    finally:
        preview.send_signal(signal.SIGINT)
        assert preview.wait(timeout=20) == 0, log.read_text()
    assert "Traceback" not in log.read_text()


def test_open_serves_the_site_until_it_is_stopped(built):
    command = [sys.executable, "-u", "-m", "underhoist", "open", str(built.site)]
    opened = subprocess.Popen(
        [*command, "--port", "0", "--no-browser"], stdout=subprocess.PIPE, text=True
    )
    try:
        said = opened.stdout.readline()
        found = re.fullmatch(r"The manual is at (http://127\.0\.0\.1:\d+/) until you .*\n", said)
        with urllib.request.urlopen(f"{found[1]}jobs/set-band/", timeout=20) as answer:  # noqa: S310
            assert "Wipe the case." in answer.read().decode()
            assert answer.headers["Cache-Control"] == "no-cache"
    finally:
        opened.send_signal(signal.SIGINT)
        assert opened.wait(timeout=20) == 0
        opened.stdout.close()
