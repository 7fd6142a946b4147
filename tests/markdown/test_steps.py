"""The ordered list under Steps, read into actions and what explains them."""

from underhoist.model import Body


def steps(reader, *items):
    text = "## Steps\n\n" + "\n\n".join(f"{n}. {item}" for n, item in enumerate(items, 1))
    return reader.sections(Body(text, 1))[-1].steps


def test_first_paragraph_is_the_action(reader):
    (step,) = steps(reader, "Turn it **in** by hand.\n\n    Why: It binds.")
    assert step.do_html == '<p class="uh-step__do">Turn it <strong>in</strong> by hand.</p>'
    assert step.text == "Turn it in by hand."
    assert step.more_html == '<p class="uh-step__why"><strong>Why</strong> It binds.</p>'


def test_every_opening_word_has_its_class(reader):
    words = ("Why", "Good", "Bad", "Mistake", "Note", "Second check", "Off", "Back on")
    (step,) = steps(reader, "Do it.\n\n" + "\n\n".join(f"    {word}: So." for word in words))
    names = ("why", "good", "bad", "mistake", "note", "check", "off", "on")
    assert step.more_html == "\n".join(
        f'<p class="uh-step__{name}"><strong>{word}</strong> So.</p>'
        for word, name in zip(words, names, strict=True)
    )
    assert step.second_check


def test_what_comes_off_and_goes_back_on_is_listed(reader):
    (step,) = steps(
        reader, "Do.\n\n    Off: pan, *two* bolts.\n\n    Off: tube\n\n    Back on: pan"
    )
    assert step.takes_off == ("pan", "two bolts", "tube")
    assert step.puts_back == ("pan",)


def test_other_word_before_a_colon_is_plain_text(reader):
    (step,) = steps(reader, "Do it.\n\n    Hint: So.")
    assert step.more_html == "<p>Hint: So.</p>"
    assert not step.second_check


def test_hazard_first_in_the_item_stands_before_the_action(reader):
    (step,) = steps(reader, "<hazard:hot>\n\n    Open it.")
    assert step.hazards == ("hot",)
    assert step.text == "Open it."


def test_references_are_collected_once_each_in_order(reader):
    (step,) = steps(
        reader, "Seat it: <torque:seat>.\n\n    Good: <torque:seat>. [Record](reading:turns)."
    )
    assert step.torques == ("wren-2/seat",)
    assert step.readings == ("set/turns",)


def test_tight_list_reads_like_a_loose_one(reader):
    tight = reader.sections(Body("## Steps\n\n1. Open *it*.\n2. Close it.", 1))[-1].steps
    assert [step.do_html for step in tight] == [
        '<p class="uh-step__do">Open <em>it</em>.</p>',
        '<p class="uh-step__do">Close it.</p>',
    ]


def test_list_inside_a_step_stays_with_it(reader):
    (step,) = steps(reader, "Check:\n\n    - one\n    - two")
    assert step.more_html == "<ul>\n<li>one</li>\n<li>two</li>\n</ul>"


def test_prose_around_the_list_is_kept(reader):
    section = reader.sections(Body("## Steps\n\nBefore.\n\n1. Do it.\n\nAfter.", 1))[-1]
    assert section.html == "<p>Before.</p>\n<p>After.</p>"
    assert [step.text for step in section.steps] == ["Do it."]


def test_list_under_another_heading_is_a_plain_list(reader):
    section = reader.sections(Body("## Before\n\n1. Read this.", 1))[-1]
    assert section.steps == ()
    assert section.html == "<ol>\n<li>Read this.</li>\n</ol>"


def test_two_pages_do_not_touch_each_other(reader):
    first = reader.sections(Body("## Steps\n\n1. Seat <torque:seat>.", 1))
    reader.sections(Body("```\nother\n```", 1))
    assert reader.sections(Body("## Steps\n\n1. Seat <torque:seat>.", 1)) == first
