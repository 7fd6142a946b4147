"""How a table's columns are set: by a class, because the pages' policy refuses styles."""

import pytest

from underhoist.model import Body

TABLE = "| a | b | c |\n|:--|--:|:-:|\n| 1 | 2 | 3 |\n"


@pytest.fixture
def html(reader):
    return "".join(section.html for section in reader.sections(Body(TABLE, 1)))


def test_each_cell_has_its_class(html):
    for side in ("left", "right", "center"):
        assert html.count(f'class="uh-{side}"') == 2


def test_no_cell_has_a_style_or_the_old_attribute(html):
    assert "style=" not in html and "align=" not in html
