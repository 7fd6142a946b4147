"""`thread-not-judged`: exact wording, and silence where nothing is wrong."""

import pytest


def fastener(rest):
    return f"fasteners:\n  cover: {{name: Cover bolts, torque: 12 N*m, {rest}}}\n"


def test_misspelt(manual):
    manual.keys("kestrel-3/set-band.md", fastener("thread: M8 x 1.35"))
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:54 thread-not-judged (look)",
            "M8 x 1.35",
            "This is no thread known here, so nobody can tell a slip of its torque's unit.",
            "Did you mean M8x1.25?",
        )
    ]


def test_of_another_sort(manual):
    manual.keys("kestrel-3/set-band.md", fastener("thread: tapered"))
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:54 thread-not-judged (look)",
            "tapered",
            "This is no thread known here, so nobody can tell a slip of its torque's unit.",
            "Write it as 5/16-18 UNC or M8 x 1.25, or say under limited_by what decides.",
        )
    ]


def test_grade_of_the_other_system(manual):
    manual.keys("kestrel-3/set-band.md", fastener("thread: M8 x 1.25, grade: grade 5"))
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:72 thread-not-judged (look)",
            "grade 5",
            "grade 5 is no strength of M8x1.25 screws.",
            "Write 4.8, 5.8, 8.8, 10.9 or 12.9.",
        )
    ]


@pytest.mark.parametrize(
    "rest", ["thread: M8 x 1.25, grade: 8.8", "thread: tapered, limited_by: Its taper", "count: 4"]
)
def test_judged_or_explained(manual, rest):
    manual.keys("kestrel-3/set-band.md", fastener(rest))
    assert manual.found() == []
