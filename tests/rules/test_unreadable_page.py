"""`unreadable-page`: exact wording, and silence where nothing is wrong."""


def test_not_utf8(manual):
    (manual.folder / "kestrel-3/set-band.md").write_bytes(b"---\ntitle: a\nsummary: \xff\n---\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:3:1 unreadable-page (stop)",
            "kestrel-3/set-band.md",
            "The file is not UTF-8 text: line 3 holds a byte that is not.",
            "Save it as UTF-8 text.",
        )
    ]


def test_binary(manual):
    (manual.folder / "picture.md").write_bytes(b"\x89PNG\r\n\x1a\n\x00\x00\x00")
    assert manual.found() == [
        (
            "picture.md:1:1 unreadable-page (stop)",
            "picture.md",
            "The file is binary, not text.",
            "Save it as text, or give it its own ending.",
        )
    ]


def test_utf_16(manual):
    (manual.folder / "new.md").write_text("---\nkind: page\n---\n", encoding="utf-16")
    assert manual.found() == [
        (
            "new.md:1:1 unreadable-page (stop)",
            "new.md",
            "The file is UTF-16 text, which some editors call Unicode.",
            "Save it as UTF-8 text.",
        )
    ]


def test_too_large(manual):
    (manual.folder / "large.md").write_bytes(b"x" * 5_000_000)
    assert manual.found() == [
        (
            "large.md:1:1 unreadable-page (stop)",
            "large.md",
            "The page holds 5.0 MB; a page holds at most 1 MB.",
            "Part it into several pages, or take out what is not text.",
        )
    ]
