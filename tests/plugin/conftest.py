"""A project of the small manual, and builds of it without the phone side."""

import pytest
from small_project import make_project

from underhoist.build import build


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

    def __init__(self, folder):
        self.folder, self.pages, self.site = folder, folder / "pages", folder / "site"
        make_project(folder)

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
