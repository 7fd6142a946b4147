"""The part of this package that the drafting page needs, as a wheel."""

from __future__ import annotations

import hashlib
import sys
from importlib.metadata import distribution
from pathlib import Path

from underhoist.browser import tools
from underhoist.browser.archive import write_wheel

_PACKAGE = Path(__file__).resolve().parents[1]
_DOOR = "underhoist.drafting.door"

# What the door imports, and nothing else, is what has to travel: a list kept by hand would age.
_ASK = f"""
import sys, {_DOOR}
for name, module in sorted(sys.modules.items()):
    if name.partition(".")[0] == "underhoist": print(module.__file__)
"""


def carried() -> dict[str, Path]:
    """Return the modules that the drafting page imports: name in the wheel, place on disk."""
    command = [sys.executable, "-c", _ASK]
    said = tools.run("Finding what the drafting page needs", command).splitlines()
    places = sorted(Path(line) for line in said)
    return {f"underhoist/{place.relative_to(_PACKAGE).as_posix()}": place for place in places}


def fingerprint(modules: dict[str, Path], recipe: str) -> str:
    """Return a hash of all that decides how the compiled wheel looks."""
    digest = hashlib.sha256(f"{recipe} {sys.version_info[:2]}".encode())
    for name, place in modules.items():
        digest.update(name.encode() + b"\0" + hashlib.sha256(place.read_bytes()).digest())
    return digest.hexdigest()[:24]


def write(modules: dict[str, Path], folder: Path) -> None:
    """Write the modules as a wheel into `folder`."""
    version = distribution("underhoist").version
    info = f"underhoist-{version}.dist-info"
    contents = {name: place.read_bytes() for name, place in modules.items()}
    contents[f"{info}/METADATA"] = (
        f"Metadata-Version: 2.1\nName: underhoist\nVersion: {version}\n".encode()
    )
    contents[f"{info}/WHEEL"] = b"Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n"
    write_wheel(folder / f"underhoist-{version}-py3-none-any.whl", contents)
