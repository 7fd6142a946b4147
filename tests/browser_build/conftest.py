import shutil
from pathlib import Path

import pytest

from underhoist.browser import install

CACHE = Path(__file__).resolve().parents[2] / ".cache"

PAGE = '<!doctype html><html lang="en-GB"><title>{title}</title><h1>{title}</h1>'


def write_site(folder):
    """A site of two pages, as the build leaves it before the phone side is added."""
    for path, title in (("", "Small &amp; plain"), ("kestrel-3/set-band", "Set the front band")):
        (folder / path).mkdir(parents=True, exist_ok=True)
        (folder / path / "index.html").write_text(PAGE.format(title=title), encoding="utf-8")
    (folder / "assets" / "icons").mkdir(parents=True)
    (folder / "assets" / "icons" / "icon-192.png").write_bytes(b"192")
    (folder / "sitemap.xml").write_text("<urlset/>", encoding="utf-8")
    return folder


@pytest.fixture
def site(tmp_path):
    return write_site(tmp_path / "site")


@pytest.fixture(scope="module")
def installed(tmp_path_factory):
    """A site with its phone side, what was reported and what was said. Not to be changed."""
    said = []
    folder = write_site(tmp_path_factory.mktemp("installed") / "site")
    return folder, install(folder, progress=said.append), said


@pytest.fixture(scope="module")
def cache(demo_site, tmp_path_factory):
    """What the build of the demo site kept of wheels and images, as a copy that tests change."""
    folder = tmp_path_factory.mktemp("cache")
    for name in ("wheels", "images"):
        shutil.copytree(CACHE / name, folder / name)
    return folder
