"""`duplicate-id`: exact wording, and silence where nothing is wrong."""


def test_procedure(manual):
    manual.page(
        "any-unit/set-band.md",
        """\
---
kind: procedure
title: A
summary: B
unit_family: any
area: fluid
minutes: 5
who: senior
---
## Steps

1. Do it.
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:1:1 duplicate-id (stop)",
            "set-band",
            "any-unit/set-band.md has the id set-band already.",
            "Give one of the two files another name.",
        )
    ]


def test_other_kind_is_another_thing(manual):
    manual.body("index.md", "[It](tool:set-band) sets [the band](procedure:set-band).\n")
    manual.page(
        "tools/set-band.md",
        """\
---
kind: tool
title: A
summary: B
---
""",
    )
    assert manual.found() == []


def test_every_folder_has_an_index(manual):
    manual.body("index.md", "See [the tools](tools/index.md).\n")
    manual.page(
        "tools/index.md",
        """\
---
kind: page
title: A
summary: B
---
""",
    )
    assert manual.found() == []
