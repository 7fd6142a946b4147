"""What others wrote and we rely on: pinned, hashed, freely licensed, without known faults.

The two questions about known faults need a network; without an answer they are skipped and say so.
"""

import json
import re
import subprocess
import sys
import tomllib
from importlib.metadata import PackageNotFoundError, metadata
from pathlib import Path
from urllib.error import URLError
from urllib.request import urlopen

import pytest
from pip._internal.models.index import PyPI

ROOT = Path(__file__).parents[1]
LOCKS = ("requirements.lock", "requirements-test.lock")
PIN = re.compile(
    r"^([a-z0-9][\w.-]*)==([^\s;\\]+)[^\n]*\\\n((?: {4}--hash=sha256:[0-9a-f]{64}.*\n)+)"
)
FREE = re.compile(
    r"MIT|BSD|Apache|ISC|MPL|Mozilla|Python Software|PSF|0BSD|Unlicense|WTFPL|BlueOak|OFL|CC0|CC-BY"
)
ARTISTIC = {"text-unidecode"}
"""By its choice of licences the Artistic one: only the tests use it."""
BUILT_BY_TESTS = {"leveldown"}
"""Comes with a database of the tests; its script is not run (npm ci --ignore-scripts)."""


def pinned(name):
    """Version of each package in a lock file."""
    blocks = re.split(r"^(?=[a-z0-9])", (ROOT / name).read_text(), flags=re.MULTILINE)
    return {match[1]: match[2] for block in blocks if (match := PIN.match(block))}


USERS, TESTS = (pinned(name) for name in LOCKS)
PINNED = USERS | TESTS
NPM = {
    path.rpartition("node_modules/")[2]: entry
    for path, entry in json.loads((ROOT / "package-lock.json").read_text())["packages"].items()
    if path
}
LISTED = tomllib.loads((Path(__file__).parent / "packages.toml").read_text(encoding="utf-8"))
"""Name of each package that is asked for, with its licence and the reason it is there."""


def asked_for(name):
    """Names of the packages in a list such as requirements.in."""
    return set(re.findall(r"^[a-z][\w-]*", (ROOT / name).read_text(), flags=re.MULTILINE))


def test_the_tests_run_with_what_users_get():
    assert USERS
    assert USERS.items() <= TESTS.items()


def licence(name):
    """Return what the installed package says; None where this machine does not need it."""
    try:
        told = metadata(name)
    except PackageNotFoundError:
        return None
    classified = [each for each in told.get_all("Classifier") or [] if each.startswith("License")]
    return " ".join((told.get("License-Expression") or "", told.get("License") or "", *classified))


def test_every_python_package_is_pinned_with_hashes():
    for name in LOCKS:
        named = re.findall(r"^[a-z0-9][^\n]*", (ROOT / name).read_text(), flags=re.MULTILINE)
        assert named and all(line.split("==")[0] in PINNED for line in named)
    assert len(PINNED) > 80


def test_every_npm_package_is_pinned_with_its_hash_and_no_host():
    assert len(NPM) > 200
    assert [name for name, entry in NPM.items() if "integrity" not in entry] == []
    assert [name for name, entry in NPM.items() if "resolved" in entry] == []


def test_every_package_that_is_asked_for_is_listed_with_its_reason():
    asked = json.loads((ROOT / "package.json").read_text())
    assert set(LISTED["python"]) == asked_for("requirements.in")
    assert set(LISTED["python-tests"]) == asked_for("requirements-test.in")
    assert set(LISTED["npm"]) == set(asked["dependencies"])
    assert set(LISTED["npm-tests"]) == set(asked["devDependencies"])
    assert all(len(reason) > 10 for part in LISTED.values() for _, reason in part.values())


def test_what_the_package_itself_needs_is_listed():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    needed = {re.split(r"[<>=~! ]", each)[0] for each in project["dependencies"]}
    assert needed - {"underhoist-calculators"} <= set(LISTED["python"])


def test_the_listed_licences_are_what_the_packages_say():
    mit = "Permission is hereby granted, free of charge"
    said = {name: licence(name) for part in ("python", "python-tests") for name in LISTED[part]}
    said |= {
        name: str(NPM[name]["license"]) for part in ("npm", "npm-tests") for name in LISTED[part]
    }
    listed = {name: words for part in LISTED.values() for name, (words, _) in part.items()}
    assert {
        name: (listed[name], words[:80])
        for name, words in said.items()
        if words is not None and listed[name] not in words.replace(mit, "MIT")
    } == {}


def test_no_npm_package_runs_a_script_when_it_is_installed():
    assert {n for n, e in NPM.items() if e.get("hasInstallScript")} == BUILT_BY_TESTS
    assert '"--ignore-scripts"' in (ROOT / "tasks.py").read_text(encoding="utf-8")


def test_none_was_given_up_by_its_makers():
    assert [n for n, e in NPM.items() if e.get("deprecated") and not e.get("dev")] == []


def test_every_licence_is_a_free_one():
    told = {name: licence(name) for name in PINNED if name not in ARTISTIC}
    assert {n: t for n, t in told.items() if t is not None and not FREE.search(t)} == {}
    shipped = {n: str(e.get("license")) for n, e in NPM.items() if not e.get("dev")}
    assert {n: t for n, t in shipped.items() if not FREE.search(t)} == {}


def test_no_python_package_has_a_known_fault():
    known = {}
    for name, version in PINNED.items():
        try:
            address = f"{PyPI.pypi_url}/{name}/{version}/json"
            with urlopen(address, timeout=5) as answer:  # noqa: S310
                found = json.load(answer)["vulnerabilities"]
        except (URLError, OSError, ValueError, KeyError) as reason:
            pytest.skip(f"Not asked: no answer about known faults of Python packages ({reason}).")
        if bad := [each["id"] for each in found if not each.get("withdrawn")]:
            known[name] = bad
    assert known == {}


def test_no_npm_package_that_goes_into_a_site_has_a_known_fault():
    npm = Path(sys.executable).with_name("npm")
    command = [str(npm), "audit", "--omit=dev", "--json", "--fetch-retries=0", "--loglevel=silent"]
    try:
        asked = subprocess.run(
            command, cwd=ROOT, capture_output=True, text=True, check=False, timeout=30
        )
        told = json.loads(asked.stdout)["vulnerabilities"]
    except (OSError, subprocess.TimeoutExpired, ValueError, KeyError):
        pytest.skip("Not asked: no answer about known faults of npm packages.")
    assert sorted(told) == []
