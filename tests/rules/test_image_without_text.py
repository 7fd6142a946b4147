"""`image-without-text`: exact wording, and silence where nothing is wrong."""


def test_empty(manual):
    manual.body("index.md", "![](drawings/band-adjuster.svg)\n")
    assert manual.found() == [
        (
            "index.md:6:1 image-without-text (stop)",
            "![](drawings/band-adjuster.svg)",
            "The image has no text for those who cannot see it.",
            "Write what it shows between the brackets.",
        )
    ]


def test_spaces(manual):
    manual.body("index.md", "a ![ ](drawings/band-adjuster.svg)\n")
    assert manual.found() == [
        (
            "index.md:6:3 image-without-text (stop)",
            "![](drawings/band-adjuster.svg)",
            "The image has no text for those who cannot see it.",
            "Write what it shows between the brackets.",
        )
    ]


def test_tag(manual):
    manual.body("index.md", '<img src="drawings/band-adjuster.svg" alt=" ">\n')
    assert manual.found() == [
        (
            "index.md:6:1 image-without-text (stop)",
            '<img src="drawings/band-adjuster.svg" alt=" ">',
            "The image has no text for those who cannot see it.",
            'Write what it shows in alt="...".',
        )
    ]


def test_tag_with_text(manual):
    manual.body("index.md", '<img alt="Adjuster" src="drawings/band-adjuster.svg">\n')
    assert manual.found() == []
