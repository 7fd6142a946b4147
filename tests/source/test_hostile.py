"""Hostile files: one clear finding each, and the rest of the manual is still checked."""

import json

import pytest
from in_child import checked_as_json, quick_start

from underhoist.check import check

PAGE = "---\nkind: page\ntitle: A page\nsummary: For a test.\n---\n"
BOMB = "".join(
    f"{a}: &{a} [{', '.join([f'*{b}'] * 9)}]\n" for a, b in zip("bcdefghi", "abcdefgh", strict=True)
)

HOSTILE = {
    "malformed YAML": ("---\nkind: [page\ntitle: }\n---\n", "front-matter"),
    "binary": (b"GIF89a\0\0\0", "unreadable-page"),
    "another encoding": ("---\ntitle: Tür\n---\n".encode("utf-16"), "unreadable-page"),
    "Latin-1": ("---\ntitle: Tür\n---\n".encode("latin-1"), "unreadable-page"),
    "lone surrogate": (b"---\ntitle: \xed\xa0\x80\n---\n", "unreadable-page"),
    "empty front matter": ("---\n---\n", "front-matter"),
    "empty file": (b"", "front-matter"),
    "five megabytes": (PAGE + "word " * 1_000_000, "unreadable-page"),
    "alias bomb": (f"---\na: &a [x]\n{BOMB}---\n", "yaml-alias"),
    "alias to itself": ("---\na: &a [*a]\n---\n", "yaml-alias"),
    "constructor": ("---\na: !!python/object/apply:os.system [ls]\n---\n", "yaml-alias"),
    "deep brackets": (f"---\na: {'[' * 50_000}\n---\n", "front-matter"),
    "deep braces": (f"---\n{'{a: ' * 50_000}\n---\n", "front-matter"),
    "deep indentation": (
        "---\n" + "".join(f"{' ' * n}a:\n" for n in range(900)) + "---\n",
        "front-matter",
    ),
    "deep dashes": (f"---\n{'- ' * 50_000}a\n---\n", "front-matter"),
    "merge key": (PAGE.replace("title", "<<: {a: b}\ntitle"), "unknown-key"),
    "key of a megabyte": (f"---\n{'k' * 900_000}: page\n---\n", "front-matter"),
    "seventy thousand keys": (
        "---\n" + "".join(f"key{n}: x\n" for n in range(70_000)) + "---\n",
        "front-matter",
    ),
    "outside": (f"{PAGE}[x](../../../../etc/passwd)\n", "outside-manual"),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_one_finding(name, tmp_path):
    content, code = HOSTILE[name]
    (tmp_path / "hostile.md").write_bytes(
        content if isinstance(content, bytes) else content.encode()
    )
    (tmp_path / "index.md").write_text(f"{PAGE}[It](hostile.md)\n")
    checked = check(tmp_path)
    assert [finding.code for finding in checked.findings] == [code]
    finding = checked.findings[0]
    assert finding.at.file == "hostile.md"
    assert len(finding.written) <= 60 and finding.written.isprintable()
    assert finding.wrong.endswith(".") and finding.mend.endswith((".", "?"))
    assert "index" in checked.manual.plain


HEAD = (
    "---\nkind: procedure\ntitle: t\nsummary: s\nunit_family: any\n"
    "area: a\nminutes: 1\nwho: senior\n---\n"
)
SLOW = {
    "backticks": "`" * 300_000 + " " + "` `` ``` " * 60_000,
    "brackets": "[" * 450_000 + "](x" * 100_000,
    "angle brackets": "<a href=" * 110_000,
    "comments": "--> " + "<!-- " * 180_000,
    "fences": "```\n~~~~\n" * 100_000,
    "fences and backticks": "` \n```\nx\n```\n" * 70_000,
    "escaped backticks": "\\``" * 300_000,
    "digits": "1 " * 450_000 + "1" * 50_000,
    "numbers": "12 lb" * 180_000,
    "list items": "## Steps\n\n" + "1. a\n" * 150_000,
    "blank lines": "## Steps\n\n1. a" + "\n \n" * 300_000,
    "definitions": "[a]: b\n" * 120_000,
    "parentheses": "](" + "(" * 900_000,
}


@pytest.mark.parametrize("name", SLOW)
def test_no_body_hangs_the_check(name, tmp_path):
    """At the size limit of a page, whatever is in it. Two minutes are a hang, not a measure."""
    (tmp_path / "slow.md").write_text(HEAD + SLOW[name])
    with quick_start().Pool(1) as child:  # it is killed at the end, hang or not
        code, said = child.apply_async(checked_as_json, (tmp_path,)).get(timeout=120)
    assert code in {0, 1}, said
    assert json.loads(said)["pages"] == 1


def test_a_name_that_cannot_be_shown(tmp_path):
    (tmp_path / "index.md").write_text(PAGE)
    (tmp_path / "bad\x1b[31m.md").write_text(PAGE)
    checked = check(tmp_path)
    assert [str(each.at) for each in checked.findings] == ["bad\ufffd[31m.md:1:1"]
    assert [each.code for each in checked.findings] == ["unreadable-page"]
