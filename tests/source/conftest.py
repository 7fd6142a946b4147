"""Pages written into a folder and loaded from there."""

from pathlib import Path

import pytest

from underhoist.source import load

PAGE = "---\nkind: page\ntitle: A page\nsummary: For a test.\n---\n"


@pytest.fixture
def loaded(tmp_path):
    def load_pages(pages: dict[str, str | bytes]):
        for file, text in pages.items():
            path: Path = tmp_path / file
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(text.encode() if isinstance(text, str) else text)
        return load(tmp_path)

    return load_pages
