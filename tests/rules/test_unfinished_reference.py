"""`unfinished-reference`: exact wording, and silence where nothing is wrong."""

import pytest

PAGE = "any-unit/leak-check.md"
WRONG = "This is no reference as it stands: the page would show the words themselves."


@pytest.mark.parametrize(
    ("written", "part", "mend"),
    [
        ("<tool:square-socket", "<tool:square-socket", "Write <tool:square-socket>."),
        ("<tool: square-socket>", "<tool: square-socket>", "Write <tool:square-socket>."),
        ("< tool:square-socket >", "< tool:square-socket >", "Write <tool:square-socket>."),
        ("tool:square-socket", "tool:square-socket", "Write <tool:square-socket>."),
    ],
)
def test_open_or_torn(manual, written, part, mend):
    manual.body(PAGE, f"## Steps\n\n1. Take the {written}, and look.\n")
    assert manual.found() == [(f"{PAGE}:12:13 unfinished-reference (stop)", part, WRONG, mend)]


def test_space_between_words_and_target(manual):
    manual.body(PAGE, "## Steps\n\n1. Take [the socket] (tool:square-socket).\n")
    assert manual.found() == [
        (
            f"{PAGE}:12:20 unfinished-reference (stop)",
            "] (tool:square-socket)",
            WRONG,
            "Write (tool:square-socket) right after the bracket.",
        )
    ]


@pytest.mark.parametrize(
    "words",
    [
        "See <procedure:set-band> and [the other](procedure:count-turns).",
        "The right tool: a socket. A part: none.",
        "Written as `<tool:square-socket` in the guide.",
        "See http://example.org/tool:square-socket for more.",
    ],
)
def test_silence(manual, words):
    manual.body(PAGE, f"## Steps\n\n1. {words}\n")
    assert manual.found() == []
