"""Hostile bodies through the check and the site's Markdown: a clear finding or harmless text."""

import re
import time
from html.parser import HTMLParser

import pytest

from underhoist.checker import Checker
from underhoist.markdown import Reader
from underhoist.model import Body
from underhoist.source import read

PAGE = "---\nkind: page\ntitle: A page\nsummary: For a test.\n---\n"
ALLOWED = {
    "a", "blockquote", "br", "code", "em", "figcaption", "figure", "h1", "h2", "h3", "h4", "h5",
    "h6", "hr", "img", "li", "ol", "p", "pre", "span", "strong", "table", "tbody", "td", "th",
    "thead", "tr", "ul",
}  # fmt: skip
HARMLESS = {"alt", "class", "colspan", "data-label", "height", "href", "id", "src", "start",
            "title", "width"}  # fmt: skip
SAFE_ADDRESS = re.compile(r"(?:https?:|mailto:|tel:|[^:]*$|[^:]*[/#?])", re.IGNORECASE)

RAW = (
    "<script>alert(1)</script>", "<ScRiPt src=//x.example/y></sCrIpT>",
    "<img src=x onerror=alert(1)>",
    "<svg onload=alert(1)><script>1</script></svg>", "<style>*{display:none}</style>",
    "<iframe srcdoc='<script>1</script>'>", "<a href=javascript:alert(1)>x</a>",
    "<math><mtext></p><style><img src onerror=alert(1)>", "<!--><script>alert(1)</script>-->",
    "<base href=//x.example>", "<form action=//x.example><button>x", "<meta http-equiv=refresh>",
    "<details open ontoggle=alert(1)>", "`<script>`<script>", "\\<script>alert(1)\\</script>",
    "[x](<a onclick=alert(1)>)", '![x](a.svg "\\" onload=alert(1)")',
    "<\x00script>alert(1)</script>",
    "&lt;script&gt; &#60;script&#62;", "\x02klzzwxh:0000\x03 \x02stx\x03", "<p style='x'>",
    "| a |\n|---|\n| <script>alert(1)</script> |", "```<script>\n<script>\n```",
    "# <script>1</script>",
    '# a {: onclick="alert(1)" }', "[a]: javascript:alert(1)\n\n[a]",
    '[x](b "a\\"><script>1</script>")',
)  # fmt: skip
ADDRESSES = (
    "javascript:alert(1)", "JaVaScRiPt:alert(1)", "java\tscript:alert(1)",
    "java&#9;script:alert(1)",
    "&#106;avascript:alert(1)", "javascript&colon;alert(1)", "&#x6A;avascript&#58;alert(1)",
    "\x01javascript:alert(1)", "%6aavascript:alert(1)", "javascript%3Aalert(1)", "vbscript:x",
    "data:text/html,<script>1</script>", "data:text/html;base64,PHNjcmlwdD4=", "//x.example/y",
    "\\\\x.example\\y", "file:///etc/passwd", "../../../../etc/passwd", "/etc/passwd", "C:\\boot",
    "..%2f..%2f..%2fetc%2fpasswd", "%2e%2e/%2e%2e/x", "\u202ejavascript:alert(1)",
    "ｊavascript:alert(1)",
    "javascript\uff1aalert(1)", "jav\u0430script:alert(1)", "blob:https://x.example/1",
    "about:blank",
    "view-source:x", "intent://x", "feed:javascript:alert(1)", " javascript:alert(1)",
    "javascript://%0aalert(1)",
)  # fmt: skip
FORMS = ("[x]({})", "[x](<{}>)", "![x]({})", "<{}>", "[x]\n\n[x]: {}", "[![y]({})](index.md)")


class Nothing:
    """A manual in which no reference leads anywhere; paths that stay in it lead where they say."""

    def shown(self, scheme, id_):
        return None

    def to_file(self, path):
        return path if re.fullmatch(r"[a-z]+\.(md|svg)", path) else None

    def size(self, path):
        return None

    def panel(self, hazard):
        return ""


class Harm(HTMLParser):
    """Collects every tag, attribute and address that does not belong in a text."""

    def __init__(self, html):
        super().__init__(convert_charrefs=True)
        self.found = []
        self.feed(html)

    def handle_starttag(self, tag, attrs):
        if tag not in ALLOWED:
            self.found.append(tag)
        for name, value in attrs:
            if name not in HARMLESS:
                self.found.append(f"{tag} {name}")
            if name in {"href", "src"} and not SAFE_ADDRESS.match(value or ""):
                self.found.append(f"{tag} {value}")

    def handle_comment(self, data):
        self.found.append("comment")


def harm(text):
    return Harm("".join(part.html for part in Reader(Nothing()).sections(Body(text, 1)))).found


@pytest.mark.parametrize("text", RAW)
def test_no_tag_of_the_author_gets_through(text):
    assert harm(text) == []


@pytest.mark.parametrize("address", ADDRESSES)
def test_no_address_that_runs_or_reaches_out_gets_through(address):
    for form in FORMS:
        assert harm(form.format(address)) == [], form


def test_the_watch_sees_what_it_must():
    assert Harm("<script>1</script>").found == ["script"]
    assert Harm("<a href='javascript:1' onclick=x>").found == ["a javascript:1", "a onclick"]


@pytest.mark.parametrize("address", [a for a in ADDRESSES if "<" not in a])
def test_the_check_lets_no_such_link_pass_in_silence(address):
    text = f"{PAGE}\n[x](<{address}>)\n"
    found = Checker({"index.md": text}).checked().findings
    assert [f for f in found if f.at.line == 7], address


DEEP = "Lists and quotes stand here more than 20 levels deep."
WILD = {
    "quotes": (">" * 10_000 + " a", DEEP),
    "quotes with spaces": ("> " * 10_000 + "a", DEEP),
    "dashes": ("- " * 10_000 + "a", DEEP),
    "numbers": ("1. " * 10_000 + "a", DEEP),
    "indented": ("".join("    " * n + "- a\n" for n in range(400)), DEEP),
    "brackets": ("[" * 10_000 + "]" * 10_000,
                 "A paragraph has 10,000 opening brackets; it has at most 200."),
    "links": ("[a](" * 10_000, "A paragraph has 10,000 opening brackets; it has at most 200."),
    "over lines": ("[a] [b\n" * 150, "A paragraph has 300 opening brackets; it has at most 200."),
}  # fmt: skip


@pytest.mark.parametrize("name", WILD)
def test_what_no_person_writes_is_one_finding(name):
    text, wrong = WILD[name]
    result = read("wild.md", (PAGE + text).encode())
    assert [(f.code, f.wrong) for f in result.findings] == [("unreadable-page", wrong)]
    assert result.page is None and result.draft is None


def test_what_a_person_may_write_passes():
    rule = "- " * 40
    rows = "| a | b |\n|---|---|\n" + "| [x](index.md) | [y](index.md) |\n" * 300
    links = "- [x](index.md)\n" * 500
    deep = "".join("    " * n + "- a\n" for n in range(10))
    text = "\n\n".join((rule, rows, links, deep, "[x](index.md) " * 200))
    assert read("long.md", (PAGE + text).encode()).findings == ()


SLOW = {
    "emphasis": "*a **b " * 10_000, "underlines": "_a__b " * 10_000, "escapes": "\\" * 50_000,
    "backticks": "`" * 20_000 + "a" + "`" * 19_999, "entities": "&#x" * 20_000,
    "tags": "<a href='" * 10_000, "wide table": "| a " * 500 + "|\n" + "|---" * 500 + "|\n",
    "blank lines": "\n" * 100_000 + "a", "headings": "a\n" * 5_000 + "===",
    "definitions": "[a]: <\n\n" * 2_000, "fences": "```\n" * 5_001,
    "at the limit": "> " * 20 + "[a] [b " * 100,
}  # fmt: skip


@pytest.mark.parametrize("name", SLOW)
def test_no_body_that_passes_hangs_the_site(name):
    """Ten seconds are a hang, not a measure: each takes well under one."""
    assert read("slow.md", (PAGE + SLOW[name]).encode()).findings == ()
    began = time.perf_counter()
    assert harm(SLOW[name]) == []
    assert time.perf_counter() - began < 10
