"""A good front matter, changed at random: always a finding or a pass, never an exception."""

import shutil
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from underhoist import rules
from underhoist.check import check

SMALLEST = Path(__file__).parents[1] / "good" / "smallest"
PAGES = {
    path.relative_to(SMALLEST).as_posix(): path.read_text(encoding="utf-8")
    for path in sorted(SMALLEST.rglob("*.md"))
}
CODES = {rule.code for rule in rules.ALL}
SIGNS = st.sampled_from([
    *"{}[]:,-#&*!|>%@`'\"\\ \t\n0123456789.abcXYZé°·\u2028\ufeff",
    "---\n", "\n  ", ": ", "- ", "<<: ", "null", "~", "nan", "1e999", "-1", "lbf*ft", " to ", "any",
])  # fmt: skip


@pytest.fixture(scope="module")
def manual(tmp_path_factory):
    folder = tmp_path_factory.mktemp("mutations") / "manual"
    shutil.copytree(SMALLEST, folder)
    return folder


@st.composite
def mutated(draw):
    """A page's file and its text with one to four places cut, doubled or written over."""
    file = draw(st.sampled_from(sorted(PAGES)))
    text = PAGES[file]
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(text)))
        end = min(len(text), start + draw(st.integers(0, 30)))
        put = draw(st.one_of(SIGNS, st.just(text[start:end] * 2), st.just(""), st.text(max_size=8)))
        text = text[:start] + put + text[end:]
    return file, text


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(page=mutated())
def test_a_finding_or_a_pass(page, manual):
    file, text = page
    (manual / file).write_bytes(text.encode("utf-8", "surrogatepass"))
    checked = check(manual)
    (manual / file).write_text(PAGES[file], encoding="utf-8")
    lines = text.replace("\r\n", "\n").replace("\r", "\n").count("\n") + 1
    for finding in checked.findings:
        assert finding.code in CODES
        assert finding.at.line >= 1 and finding.at.column >= 1
        assert finding.at.file != file or finding.at.line <= lines
        assert finding.wrong and finding.mend
        assert len(finding.written) <= 60
        assert "Traceback" not in finding.wrong and "object at 0x" not in finding.wrong
    read = {page.file for page in checked.manual.pages()} | {
        page.file for page in checked.manual.repeated
    }
    assert (file in read) != (file in checked.manual.unread.values())
