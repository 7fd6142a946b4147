"""A manual of four things for the reader to ask about."""

import pytest

from underhoist.markdown import Reader, Shown

KNOWN = {
    ("torque", "seat"): Shown("torque:wren-2/seat", "../calc/?torque=9", "Band seat", "120 lbf·in"),
    ("tool", "lamp"): Shown("tool:lamp", "../tools/lamp/", "Lamp & cord"),
    ("reading", "turns"): Shown("reading:set/turns", "#reading-turns", "Turns"),
    ("hazard", "hot"): Shown("hazard:hot", "../hazards/hot/", "Hot fluid"),
}


class FakeContext:
    """Answers as a page of a manual would."""

    def shown(self, scheme, id_):
        return KNOWN.get((scheme, id_))

    def to_file(self, path):
        return f"up/{path.removesuffix('.md')}" if path.startswith(("a", "b")) else None

    def size(self, path):
        return (340, 200) if path == "band.svg" else None

    def panel(self, hazard):
        return f'<aside class="uh-hazard">{hazard}</aside>'


@pytest.fixture
def reader():
    return Reader(FakeContext())
