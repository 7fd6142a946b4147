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
