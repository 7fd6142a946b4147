"""Any text as a body: harmless HTML, and no link in it that the check does not know of."""

from html import unescape

import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_markdown import PAGE, harm
from tries import tries

from underhoist.checker import Checker
from underhoist.link_targets import file_links
from underhoist.markdown import Reader
from underhoist.model import Body
from underhoist.prose import prose
from underhoist.references import SCHEMES, find
from underhoist.source import read

PIECES = (
    *" \n()[]<>!`*_#|\\\"'&;:/.", "\n\n", "\n## Steps\n\n1. ", "\n2. ", "\n   ", "\n\t", "\n> ",
    "\n- ", "```\n", "~~~", "<!-- ", " -->", "<torque:seat>", "[a](torque:seat)", "[b](index.md)",
    "](", "![", "![c](band.svg)", "<https://x.example>", "[d]: raise.md\n", "[d]", "[d][]",
    "javascript:", "JAVAscript&colon;", "<script>", "</script>", "<img src=x onerror=1>", ' "t")',
    "<a.md>", "| a | b |\n|---|---|\n", "Why: ", "Mistake: ", "Off: band, seat", "caution",
    "hazard:hot-fluid", "<hazard:hot-fluid>", "\x02", "\x03", "klzzwxh:0", "\u2028", "\ud800",
    "{: onclick=1}", "==", "--", "    ", "9999999999. ", "&#106;", "%2e%2e/",
)  # fmt: skip
BODIES = st.lists(st.sampled_from(PIECES), max_size=30).map("".join) | st.text(max_size=80)
LINKS = ("[a](torque:seat)", "[b](index.md)", "![c](band.svg)", "<torque:seat>", "[d]: raise.md\n")
CODE = ("`", "``", "```", "\n```\n", "\n~~~\n", "```py\n", "\\", "\\`", "<!--", "-->", "\n", "\n\n",
        "\n- ", "    ", "| a | ", "|\n", " ", "b")  # fmt: skip
LINKED = BODIES | st.lists(st.sampled_from(LINKS + CODE), max_size=16).map("".join)
"""Links, and all that may make code or a comment of them."""


class Asked:
    """A manual that keeps what it is asked for, and in which every path leads to a file."""

    def __init__(self):
        self.paths = []
        self.references = []

    def shown(self, scheme, id_):
        self.references.append(f"{scheme}:{id_}")

    def to_file(self, path):
        self.paths.append(path)
        return "there/"

    def size(self, path):
        return None

    def panel(self, hazard):
        self.references.append(f"hazard:{hazard}")
        return ""


@tries(250)
@given(BODIES)
def test_no_body_becomes_more_than_a_text(text):
    made = read("any.md", (PAGE + text).encode("utf-8", "surrogatepass"))
    for each in made.findings:
        assert each.wrong.endswith(".") and each.mend.endswith(".")
    if made.page:
        assert harm(made.page.body.text) == []


@tries(250)
@given(LINKED)
def test_the_check_knows_every_link_of_the_page(text):
    made = read("any.md", (PAGE + text).encode("utf-8", "surrogatepass"))
    if not made.page:
        return
    asked = Asked()
    list(Reader(asked).sections(made.page.body))
    links = prose(made.page.body).links("any.md")
    known = {unescape(link.target) for link in links} | {link.target for link in links}
    assert {*asked.paths, *asked.references} - {""} <= known
    body = made.page.body
    for link in links:
        assert 0 <= link.offset < len(body.text)
        assert body.first_line <= link.at.line <= body.first_line + body.text.count("\n")
    for reference in find(body, "any.md"):
        assert reference.scheme in SCHEMES
    for link, target in file_links(made.page):
        assert link in links and target


@tries(150)
@given(BODIES)
def test_steps_are_whole_and_in_order(text):
    body = Body(f"## Steps\n\n1. {text}", 1)
    steps = prose(body).steps
    assert [step.start for step in steps] == sorted(step.start for step in steps)
    for step in steps:
        assert body.text[step.start : step.end] == step.text or step.text
        for offset, paragraph in step.paragraphs():
            assert step.start <= offset <= step.end and paragraph


@pytest.mark.parametrize(
    "text",
    ["> [d]: gone.md\n\n[d]", "- [d]: gone.md\n\n[d]", "[d]:\n  gone.md\n\n[d]", "]([a](gone.md)"],
)
def test_a_link_in_an_odd_place_is_checked_too(text):
    found = Checker({"index.md": f"{PAGE}\n{text}\n"}).checked().findings
    assert [each.code for each in found] == ["dead-reference"]
