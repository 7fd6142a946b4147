"""`outside-manual`: exact wording, and silence where nothing is wrong."""


def test_climbs_out(manual):
    manual.body("index.md", "[a](../secret.md)\n")
    assert manual.found() == [
        (
            "index.md:6:1 outside-manual (stop)",
            "../secret.md",
            "The path leads out of the manual's folder.",
            "Put the file into the manual's folder.",
        )
    ]


def test_climbs_out_in_disguise(manual):
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. See [a](../tools/%2e%2e/../../secret.pdf).
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/clean-adjuster.md:19:8 outside-manual (stop)",
            "../tools/%2e%2e/../../secret.pdf",
            "The path leads out of the manual's folder.",
            "Put the file into the manual's folder.",
        )
    ]


def test_absolute(manual):
    manual.body("index.md", "![Map](/etc/map.png)\n")
    assert manual.found() == [
        (
            "index.md:6:1 outside-manual (stop)",
            "/etc/map.png",
            "The path does not begin at this page's folder.",
            (
                "Write it from this page's folder, with forward slashes, such as "
                "../drawings/band.svg."
            ),
        )
    ]


def test_backslashes(manual):
    manual.body("index.md", "[a](..\\..\\a.md)\n")
    assert manual.found() == [
        (
            "index.md:6:1 outside-manual (stop)",
            "..\\..\\a.md",
            "A path in a page has forward slashes.",
            (
                "Write it from this page's folder, with forward slashes, such as "
                "../drawings/band.svg."
            ),
        )
    ]


def test_file_scheme(manual):
    manual.body("index.md", "[a](file:///etc/passwd)\n")
    assert manual.found() == [
        (
            "index.md:6:1 outside-manual (stop)",
            "file:///etc/passwd",
            "file: reaches out of the manual into the reader's own machine.",
            "Put the file into the manual's folder, or take the link out.",
        )
    ]


def test_script(manual):
    manual.body("index.md", '<a href="javascript:alert(1)">a</a>\n')
    assert manual.found() == [
        (
            "index.md:6:1 outside-manual (stop)",
            "javascript:alert(1)",
            "javascript: reaches out of the manual into the reader's own machine.",
            "Put the file into the manual's folder, or take the link out.",
        )
    ]


def test_image_from_elsewhere(manual):
    manual.body("index.md", "![Map](https://example.org/map.png)\n")
    assert manual.found() == [
        (
            "index.md:6:1 outside-manual (stop)",
            "https://example.org/map.png",
            "The image is fetched from elsewhere and is missing without a network.",
            "Put the file into the manual's folder.",
        )
    ]


def test_drive(manual):
    manual.body("index.md", "[a](c:/manuals/a.md)\n")
    assert manual.found() == [
        (
            "index.md:6:1 outside-manual (stop)",
            "c:/manuals/a.md",
            "c: reaches out of the manual into the reader's own machine.",
            "Put the file into the manual's folder, or take the link out.",
        )
    ]


def test_symlink(manual):
    (manual.folder / "tools/away.md").symlink_to("/etc/hostname")
    assert manual.found() == [
        (
            "tools/away.md:1:1 outside-manual (stop)",
            "tools/away.md",
            "The file is a link that does not lead to a file of the manual's folder.",
            "Put the file itself there.",
        )
    ]


def test_linked_folder(manual):
    (manual.folder / "more").symlink_to("tools")
    assert manual.found() == [
        (
            "more:1:1 outside-manual (stop)",
            "more",
            "The file is a link that does not lead to a file of the manual's folder.",
            "Put the file itself there.",
        )
    ]


def test_link_within(manual):
    (manual.folder / "drawings/same.svg").symlink_to("band-adjuster.svg")
    manual.body("index.md", "![The same](drawings/same.svg)\n")
    assert manual.found() == []
