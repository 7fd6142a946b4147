"""Drawings and web pages in the manual's folder: what would run is refused with its line."""

import pytest

from underhoist.check import FolderChecker, check
from underhoist.finding import Severity
from underhoist.source.drawing import live_file

PAGE = "---\nkind: page\ntitle: A page\nsummary: For a test.\n---\n\n![A band](band.svg)\n"
OPEN = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">'
BOMB = '<!ENTITY a "aaaaaaaaaa">' + "".join(
    f'<!ENTITY {b} "{f"&{a};" * 10}">' for a, b in zip("abcdefgh", "bcdefghi", strict=True)
)
RUNS = "does not draw: it runs, moves or holds a page."
OUT = "leads out of the drawing."
HELD = {
    "script": ("<script>alert(1)</script>", f"<script> {RUNS}"),
    "script of its own name space": ('<script xmlns="urn:x">1</script>', f"<script> {RUNS}"),
    "script under a prefix": (
        '<s:script xmlns:s="http://www.w3.org/2000/svg">1</s:script>', f"<script> {RUNS}"),
    "page": ("<foreignObject/>", f"<foreignObject> {RUNS}"),
    "element of a page": (
        '<b xmlns="http://www.w3.org/1999/xhtml"/>', f"<b> {RUNS}"),
    "moving address": ('<a><set attributeName="href" to="javascript:1"/></a>', f"<set> {RUNS}"),
    "handler": ('<g onload="alert(1)"/>', "onload would run a script."),
    "handler in capitals": ('<g ONCLICK="alert(1)"/>', "ONCLICK would run a script."),
    "address that runs": ('<a xlink:href="javascript:alert(1)"/>', f"href {OUT}"),
    "address with a tab": ('<a href="java&#9;script:alert(1)"/>', f"href {OUT}"),
    "address elsewhere": ('<image href="https://elsewhere.example/a.png"/>', f"href {OUT}"),
    "relative address": ('<use href="other.svg#a"/>', f"href {OUT}"),
    "drawing in an address": (
        '<image href="data:image/svg+xml;base64,PHN2Zz4="/>', f"href {OUT}"),
    "paint from elsewhere": ('<g fill="url(//elsewhere.example/#a)"/>', f"fill {OUT}"),
    "style from elsewhere": ('<g style="fill: URL( \'x.svg#a\')"/>', f"style {OUT}"),
    "style with an escape": ('<g style="fill: u\\72l(x)"/>', f"style {OUT}"),
    "style sheet": (
        "<style>@import 'x.css';</style>", "The drawing's style leads out of the drawing."),
    "style sheet in pieces": (
        "<style>a{fill:u<!-- -->rl(x)}</style>", "The drawing's style leads out of the drawing."),
    "style sheet by instruction": (
        '<?xml-stylesheet href="x.css"?>', "A drawing gives no instructions to a browser."),
}  # fmt: skip


@pytest.mark.parametrize("name", HELD)
def test_what_does_not_draw_is_refused(name):
    held, wrong = HELD[name]
    found = live_file("band.svg", f"{OPEN}\n{held}\n</svg>".encode())
    assert found and found.wrong == wrong
    assert (found.code, found.severity, found.at.line) == ("outside-manual", Severity.STOP, 2)
    assert found.mend == "Take it out, and save the drawing as plain SVG."


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
@pytest.mark.parametrize("inner", [BOMB, '<!ENTITY x SYSTEM "file:///etc/passwd">'])
def test_entities_are_refused_before_they_grow(inner, encoding):
    text = f"<!DOCTYPE svg [{inner}]>\n{OPEN}<text>&i;&x;</text></svg>"
    found = live_file("band.SVG", text.encode(encoding))
    assert found and found.wrong == "A drawing declares no entities."


@pytest.mark.parametrize(
    "text", ["", "<svg>", "<html><script>1</script>", f"{OPEN}<g a=1/></svg>", "GIF89a", "\0"]
)
def test_what_is_no_sound_drawing_is_refused(text):
    found = live_file("band.svg", text.encode())
    assert found and found.wrong.startswith(("The drawing is no sound SVG: ", "<script>"))


def test_what_draws_passes():
    drawing = f"""<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">
{OPEN}<metadata><rdf:RDF xmlns:rdf="urn:r" rdf:path="C:\\band"/></metadata><title>A band</title>
<style>.a {{ fill: url(#lines) }}</style><g class="a" style="stroke: url('#lines')"/>
<use xlink:href="#a"/><image href="data:image/png;base64,AAAA"/></svg>"""
    assert live_file("band.svg", drawing.encode()) is None
    assert live_file("band.png", b"<svg onload='1'/>") is None


@pytest.mark.parametrize("file", ["more.html", "more.XHTML", "deep/more.xml", "more.svgz"])
def test_a_web_page_in_the_folder_is_refused(file, tmp_path):
    (tmp_path / "index.md").write_text(PAGE.partition("!")[0] + f"[More]({file})\n")
    (tmp_path / file).parent.mkdir(exist_ok=True)
    (tmp_path / file).write_text("<script>alert(1)</script>")
    checked = check(tmp_path)
    assert [(each.code, each.at.file) for each in checked.findings] == [("outside-manual", file)]
    ending = file[file.index(".") :].lower()
    assert checked.findings[0].wrong == (
        f"A file that ends in {ending} opens as a page of its own, outside the manual."
    )


def test_a_drawing_is_looked_into_again_when_it_changes(tmp_path):
    (tmp_path / "index.md").write_text(PAGE)
    drawing = tmp_path / "band.svg"
    drawing.write_text(f"{OPEN}<script/></svg>")
    checker = FolderChecker(tmp_path)
    assert checker.checked().stops == 1
    drawing.write_text(f"{OPEN}<title>A band</title></svg>")
    checker.refresh()
    assert checker.checked().findings == ()
    drawing.write_text(f"{OPEN}<g onload='1'/></svg>")
    checker.refresh()
    assert checker.checked().stops == 1
    drawing.unlink()
    checker.refresh()
    assert [each.code for each in checker.checked().findings] == ["dead-reference"]
