"""A project of the small manual, and builds of it without the phone side."""

import shutil

import pytest
from small_project import make_project

from underhoist.build import build
from underhoist.rebuild.store import place_of


def without_phone_side(site, tell):
    """Most tests are about the pages: they do not wait for the runtime to be copied."""


class Silent:
    """Keeps what it is told."""

    def __init__(self):
        self.stages, self.steps = [], 0

    def stage(self, words, steps=None):
        self.stages.append((words, steps))

    def step(self):
        self.steps += 1


class Project:
    """A project in a folder of its own."""

    def __init__(self, folder, like=None):
        """Lay the small manual into the folder, or a copy of a project as it stands."""
        self.folder, self.pages, self.site = folder, folder / "pages", folder / "site"
        if like:
            shutil.copytree(like.folder, folder)
            self.take_what_was_kept(like)
        else:
            make_project(folder)

    def take_what_was_kept(self, like):
        """What is kept of a build is named after its site's place, which is another one here."""
        place = place_of(self.folder, self.site)
        old = place.with_name(place_of(like.folder, like.site).name)
        for path in old.parent.glob(f"{old.stem}.*"):
            path.rename(place.with_suffix(path.suffix))

    def build(self, add_phone_side=without_phone_side, since=None, afresh=False):
        return build(self.folder, self.site, Silent(), add_phone_side, since, afresh=afresh)

    def replace(self, file, old, new):
        path = self.pages / file
        text = path.read_text(encoding="utf-8")
        assert old in text
        path.write_text(text.replace(old, new), encoding="utf-8")

    def held(self):
        """Every file of the site with its bytes."""
        files = (path for path in self.site.rglob("*") if path.is_file())
        return {path.relative_to(self.site).as_posix(): path.read_bytes() for path in files}

    def beside(self):
        """What lies in the project's folder, what is kept of builds left out."""
        return sorted(path.name for path in self.folder.iterdir() if path.name != ".cache")


@pytest.fixture
def project(tmp_path):
    return Project(tmp_path)


@pytest.fixture(scope="session")
def built(tmp_path_factory):
    """A project that was built once, only to be read."""
    project = Project(tmp_path_factory.mktemp("built"))
    project.result = project.build()
    return project


@pytest.fixture
def standing(built, tmp_path):
    """A project whose site was built, to be changed."""
    return Project(tmp_path / "standing", like=built)
