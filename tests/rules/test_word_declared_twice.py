"""`word-declared-twice`: exact wording, and silence where a name may mean several things."""


def test_other_name_of_two_words(manual):
    manual.keys(
        "index.md",
        "words:\n  petrol: {also: [gas]}\n  gas fuel: {also: [autogas, Gas]}\n",
    )
    assert manual.found() == [
        (
            "index.md:7:30 word-declared-twice (stop)",
            "Gas",
            "It belongs to petrol already.",
            "Keep it under one of them. If it can mean both, put it under heard in both.",
        )
    ]


def test_other_name_that_is_a_word_itself(manual):
    manual.keys("index.md", "words:\n  pan: {also: [sumps]}\n  sump: {meaning: The pan.}\n")
    assert [each[:3] for each in manual.found()] == [
        (
            "index.md:6:16 word-declared-twice (stop)",
            "sumps",
            "It belongs to sump already.",
        )
    ]


def test_other_name_twice_under_one_word(manual):
    manual.keys("index.md", "words:\n  kick-down: {also: [kickdown, Kickdown]}\n")
    assert [each[2:] for each in manual.found()] == [
        ("It stands under kick-down twice.", "Take it out here.")
    ]


def test_other_name_that_is_the_word_itself(manual):
    manual.keys("index.md", "words:\n  tail housing: {also: [tail-housing]}\n")
    assert [each[2] for each in manual.found()] == ["It stands under tail housing twice."]


def test_two_pages_declare_one_word(manual):
    manual.keys("index.md", "words:\n  pan: {also: [sump]}\n")
    manual.page(
        "words.md",
        "---\nkind: page\ntitle: Words\nsummary: More.\nwords:\n  Pan: {also: [tray]}\n---\n"
        "Back to [the front](index.md).\n",
    )
    manual.body("kestrel-3/count-turns.md", COUNT)
    found = [each for each in manual.found() if "declared-twice" in each[0]]
    assert found == [
        (
            "words.md:1:1 word-declared-twice (stop)",
            "Pan",
            "index.md declares pan already.",
            "Keep one of the two and put the other names there.",
        )
    ]


COUNT = "## Steps\n\n1. Count: <reading:turns-to-seat>. See [words](../words.md).\n"


def test_two_words_that_differ_in_signs_alone(manual):
    manual.keys("index.md", "words:\n  lbf·in: {heard: [in-lb]}\n  lbf in: {meaning: It.}\n")
    assert manual.found() == [
        (
            "index.md:1:1 word-declared-twice (stop)",
            "lbf in",
            "index.md declares lbf·in already.",
            "Keep one of the two and put the other names there.",
        )
    ]


def test_a_name_without_a_letter_is_refused_as_it_is_read(manual):
    manual.keys("index.md", 'words:\n  "-": {also: [sump]}\n  pan: {also: ["--"]}\n')
    found = [each for each in manual.found() if each[0].startswith("index.md")]
    assert [(each[0], each[2]) for each in found] == [
        ("index.md:6:3 wrong-value (stop)", "An id is written with at least one letter or digit."),
        ("index.md:7:16 wrong-value (stop)", "also is written with at least one letter or digit."),
    ]


def test_heard_names_may_mean_several_things(manual):
    manual.keys(
        "index.md",
        "words:\n  petrol: {heard: [gas, fuel]}\n  gas fuel: {heard: [gas]}\n"
        "  fuel: {meaning: Either.}\n",
    )
    assert manual.found() == []
