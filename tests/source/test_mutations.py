"""A good front matter, changed at random: always a finding or a pass, never an exception."""

from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from underhoist import rules
from underhoist.check import check

SMALLEST = Path(__file__).parents[1] / "good" / "smallest"
PAGES = [(SMALLEST / file).read_text(encoding="utf-8") for file in (
    "families/kestrel-3.md", "kestrel-3/set-band.md", "kestrel-3/count-turns.md",
    "faults/late-shifts.md", "hazards/flying-parts.md", "tools/inch-pound-wrench.md",
)]  # fmt: skip
CODES = {rule.code for rule in rules.ALL}
SIGNS = st.sampled_from([
    *"{}[]:,-#&*!|>%@`'\"\\ \t\n0123456789.abcXYZé°·\u2028\ufeff",
    "---\n", "\n  ", ": ", "- ", "<<: ", "null", "~", "nan", "1e999", "-1", "lbf*ft", " to ", "any",
])  # fmt: skip


@st.composite
def mutated(draw):
    """A page with one to four places cut, doubled, moved or written over."""
    text = draw(st.sampled_from(PAGES))
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(text)))
        end = min(len(text), start + draw(st.integers(0, 30)))
        put = draw(st.one_of(SIGNS, st.just(text[start:end] * 2), st.just(""), st.text(max_size=8)))
        text = text[:start] + put + text[end:]
    return text


@settings(
    max_examples=400, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(text=mutated())
def test_a_finding_or_a_pass(text, tmp_path):
    (tmp_path / "page.md").write_bytes(text.encode("utf-8", "surrogatepass"))
    checked = check(tmp_path)
    count = text.replace("\r\n", "\n").replace("\r", "\n").count("\n") + 1
    for finding in checked.findings:
        assert finding.code in CODES
        assert finding.at.file == "page.md"
        assert 1 <= finding.at.line <= count and finding.at.column >= 1
        assert finding.wrong and finding.mend
        assert len(finding.written) <= 60
        assert "Traceback" not in finding.wrong and "object at 0x" not in finding.wrong
    known = [page.file for page in checked.manual.pages()]
    assert known == ["page.md"] or checked.manual.unread == {"page": "page.md"}
