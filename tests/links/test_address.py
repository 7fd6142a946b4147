"""Addresses below the site's root, and the links between them."""

import pytest

from underhoist.links import page_address, rebased, relative


@pytest.mark.parametrize(
    ("file", "address"),
    [
        ("index.md", ""),
        ("one-visit.md", "one-visit/"),
        ("tools/hoist.md", "tools/hoist/"),
        ("tools/index.md", "tools/"),
        ("a/b/c.md", "a/b/c/"),
    ],
)
def test_page_lives_where_its_file_stands(file, address):
    assert page_address(file) == address


@pytest.mark.parametrize(
    ("address", "base", "link"),
    [
        ("", "", "./"),
        ("tools/hoist/", "", "tools/hoist/"),
        ("", "tools/hoist/", "../../"),
        ("tools/", "tools/hoist/", "../"),
        ("tools/jack/", "tools/hoist/", "../jack/"),
        ("tools/hoist/", "tools/hoist/", "./"),
        ("drawings/band.svg", "jobs/set-band/", "../../drawings/band.svg"),
        ("tools/hoist/#use", "tools/hoist/", "#use"),
        ("tools/hoist/#use", "tools/", "hoist/#use"),
        ("calculators/a/?torque=9+lbf*ft", "", "calculators/a/?torque=9+lbf*ft"),
        ("cards/?a=1/2", "cards/", "./?a=1/2"),
    ],
)  # fmt: skip
def test_link_counts_from_the_page_it_stands_on(address, base, link):
    assert relative(address, base) == link


@pytest.mark.parametrize(
    ("link", "moved"),
    [
        ("#reading-turns", "../jobs/set-band/#reading-turns"),
        ("./", "../jobs/set-band/"),
        ("../raise/", "../jobs/raise/"),
        ("../../drawings/band.svg", "../drawings/band.svg"),
        ("../../", "../"),
        ("../../cards/", "./"),
        ("../../calculators/a/?b=9+lbf*ft&amp;c=1/2", "../calculators/a/?b=9+lbf*ft&amp;c=1/2"),
        ("https://example.org/a/", "https://example.org/a/"),
        ("mailto:a@example.org", "mailto:a@example.org"),
    ],
)  # fmt: skip
def test_links_are_moved_to_another_page(link, moved):
    html = f'<a class="x" href="{link}"><img src="{link}" alt="href">'
    wanted = f'<a class="x" href="{moved}"><img src="{moved}" alt="href">'
    assert rebased(html, "jobs/set-band/", "cards/") == wanted
