"""The joint angle calculator: what is left, what to do first, what is refused."""

import pytest
from underhoist_calculators import door


def run(**entries):
    return door.run("joint-angles", {k.replace("_", "-"): v for k, v in entries.items()})


def answer(**entries):
    result = run(**entries)
    assert result["errors"] == {}
    return result["answer"]


def test_unequal_joints():
    found = answer(first_side="7°", second_side="5°")
    assert found["summary"] == (
        "The two joints leave the unevenness of one joint at 4.9°, more than the 3.0° allowed."
    )
    assert found["do"] == [
        "Make both angles alike with shims under the mount or wedges at the axle, loaded as it is "
        "driven."
    ]
    assert found["working"][2]["numbers"] == "7.00° and 5.00°; the short formula gives 4.90°"


def test_equal_joints_are_even_though_the_middle_shaft_is_not():
    found = answer(first_side="7°", second_side="-7°")
    assert found["values"]["verdict"] == "even"
    assert found["values"]["residual"]["value"] == pytest.approx(0, abs=1e-5)
    assert found["do"] == []
    assert found["warnings"] == [
        "The middle shaft itself turns unevenly whatever the second joint does: keep both angles "
        "small."
    ]


def test_twisted_yokes_are_put_in_line_first():
    found = answer(first_side="7°", second_side="7°", yokes="90°")
    assert found["do"][0] == ("Put the yokes of the middle shaft in line: that leaves 0.0°.")
    assert found["values"]["residual"]["value"] == pytest.approx(9.88, abs=0.02)


def test_two_planes():
    found = answer(first_side="5°", second_side="0°", second_top="5°")
    assert found["do"] == ["Bring both joints into one plane: move the mount sideways."]


def test_one_joint_alone():
    found = answer(first_side="2°")
    assert found["summary"] == "One joint at 2.0° alone: within the 3.0° allowed."
    assert found["warnings"] == []


def test_a_straight_joint_marks_its_cross():
    found = answer(first_side="0°")
    assert found["warnings"] == [
        "A joint without any angle does not turn its needles: they mark its cross."
    ]


def test_radians_give_the_same_shaft():
    degrees = answer(first_side="7°", second_side="5°")["values"]["residual"]["value"]
    found = answer(first_side="0.12217304763960307 rad", second_side="5°")
    assert found["values"]["residual"]["value"] == pytest.approx(degrees)


@pytest.mark.parametrize(
    ("entries", "field", "wrong"),
    [
        ({"first_side": "90°"}, "first-side", "At 90° the joint cannot turn."),
        (
            {"first_side": "5°", "second_side": "-90°"}, "second-side",
            "At 90° the joint cannot turn.",
        ),
        (
            {"first_side": "5°", "second_top": "3°"}, "second-side",
            "The second joint has a top view but no side view.",
        ),
    ],
)  # fmt: skip
def test_refused(entries, field, wrong):
    assert run(**entries)["errors"][field]["wrong"] == wrong
