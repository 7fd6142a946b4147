"""Answers as plain text."""

from underhoist_calculators import door


def test_an_answer_is_read_from_top_to_bottom():
    text = door.run("staged-fill", door.example("staged-fill"))["answer_text"]
    order = [
        "Staged fill",
        "Put in 3.8 L before starting",
        "What to do",
        "Working",
        "Sources",
        "Limits",
    ]
    places = [text.index(words) for words in order]
    assert places == sorted(places)


def test_a_table_stands_in_columns():
    text = door.run("torque-units", {"torque": "9 lbf·ft"})["answer_text"]
    lines = [line for line in text.splitlines() if "what is wanted" in line and "lbf·in" in line]
    assert lines[-1] == "  9 lbf·in       1.02 N·m   8.3 % of what is wanted"


def test_errors_are_one_line_each():
    text = door.run("torque-units", {"torque": "12 lb"})["answer_text"]
    assert text == (
        "torque: lb is a unit of a mass, not of a torque. Write 12 N·m, 12 lbf·ft or 12 lbf·in."
    )
