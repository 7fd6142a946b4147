"""A complaint whose every figure can be reckoned in the head."""

import pytest
from underhoist_calculators.fault_finding.complaint import Cause, Check, Complaint, Level


@pytest.fixture
def late():
    """Hose 50, diaphragm 30, governor 10, none 10; the hoist takes 10 minutes, the pan 40 more."""
    return Complaint(
        causes=(
            Cause(id="hose", name="Hose split", share=0.5, mend_minutes=10),
            Cause(id="diaphragm", name="Diaphragm leaking", share=0.3, mend_minutes=20),
            Cause(id="governor", name="Governor sticking", share=0.1),
            Cause(id="none-of-these", name="None of these", share=0.1),
        ),
        checks=(
            Check(id="drive", name="Drive it", minutes=30, access="road", bad={"governor": 1}),
            Check(
                id="gauge",
                name="Vacuum right",
                minutes=10,
                access="hoist",
                bad={"hose": 1, "diaphragm": 1},
            ),
            Check(id="pump", name="Holds", minutes=20, access="hoist", bad={"diaphragm": 1}),
        ),
        levels={
            "road": Level(name="road", minutes=5),
            "hoist": Level(name="hoist", minutes=10),
            "pan": Level(name="pan", minutes=40, through="hoist"),
        },
    )
