"""A builder that was installed on its own fetches the phone-side packages: once, and whole."""

import json
from pathlib import Path

import pytest

from underhoist.browser import BrowserError, packages, tools

ROOT = Path(__file__).parents[2]


@pytest.fixture
def alone(tmp_path, monkeypatch):
    """An installed builder: it carries the list, and there are no packages above it."""
    listed = tmp_path / "listed"
    listed.mkdir()
    for name in ("package.json", "package-lock.json"):
        (listed / name).write_bytes((ROOT / name).read_bytes())
    monkeypatch.setattr(packages, "LISTED", listed)
    monkeypatch.setattr(packages, "user_cache_path", lambda *_, **__: tmp_path / "cache")
    monkeypatch.setattr(tools, "__file__", str(tmp_path / "installed" / "tools.py"))
    return tmp_path / "cache"


def pretend(calls):
    def run(what, command, *, cwd):
        calls.append((what, command[1:], sorted(path.name for path in cwd.iterdir())))
        (cwd / "node_modules" / "pyodide").mkdir(parents=True)
        (cwd / "node_modules" / "pyodide" / "package.json").write_text("{}")

    return run


def test_a_working_tree_carries_no_list():
    assert packages.home() is None


def test_they_are_fetched_once_and_by_the_lock(alone, tmp_path, monkeypatch):
    calls = []
    monkeypatch.setattr(tools, "run", pretend(calls))
    found = [tools.node_modules(tmp_path / "site") for _ in range(2)]
    assert found[0] == found[1] == packages.home() / "node_modules"
    ((_, words, files),) = calls
    assert words[:2] == ["ci", "--omit=dev"]
    assert "--ignore-scripts" in words
    assert files == ["package-lock.json", "package.json"]
    assert [path.name for path in alone.iterdir()] == [packages.home().name]


def test_a_fetch_that_breaks_off_leaves_nothing(alone, tmp_path, monkeypatch):
    def broken(what, command, *, cwd):
        (cwd / "node_modules").mkdir()
        raise BrowserError(what)

    monkeypatch.setattr(tools, "run", broken)
    with pytest.raises(BrowserError, match="it is done once, and wants a network"):
        tools.node_modules(tmp_path / "site")
    assert list(alone.iterdir()) == []


def test_another_lock_is_another_folder(alone, monkeypatch):
    before = packages.home()
    lock = packages.LISTED / "package-lock.json"
    lock.write_text(json.dumps({"name": "another"}))
    assert packages.home() != before


def test_the_wheel_takes_the_list_along():
    text = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    for name in ("package.json", "package-lock.json"):
        assert f'"{name}" = "underhoist/browser/npm/{name}"' in text
