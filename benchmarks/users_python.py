"""A Python with the packages that `make manual` installs, and none that only the tests need.

The tests bring NumPy, which pint loads wherever it is: no user waits for that.
"""

import re
import sys
import venv
from importlib.metadata import distribution
from pathlib import Path

ROOT = Path(__file__).parents[1]
OURS = ("underhoist", "underhoist-calculators")
_PINNED = re.compile(r"^([\w.-]+)==", re.MULTILINE)
_TOOLS = ("node", "npm")
"""What the build starts and looks for beside its Python."""


def users_python(folder: Path) -> str:
    """Make it in this folder, by links to what is installed here; return its path."""
    venv.create(folder, symlinks=True)
    [packages] = folder.glob("lib/python*/site-packages")
    lock = (ROOT / "requirements.lock").read_text(encoding="utf-8")
    for name in (*_PINNED.findall(lock), *OURS):
        _link(name, packages)
    for tool in _TOOLS:
        (folder / "bin" / tool).symlink_to(Path(sys.executable).with_name(tool))
    return str(folder / "bin" / "python")


def _link(name: str, packages: Path) -> None:
    """Link the files and folders of an installed distribution; one for another system is none."""
    try:
        installed = distribution(name)
    except ModuleNotFoundError:
        return
    for first in {file.parts[0] for file in installed.files or ()} - {"..", "__pycache__"}:
        link = packages / first
        if not link.exists():  # a folder that two distributions share
            link.symlink_to(Path(str(installed.locate_file(first))))
