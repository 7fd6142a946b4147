"""The rules' pages, made from their docstrings: why, then `Good:` and `Bad:` with fenced blocks."""

import re
from collections.abc import Iterator

from markupsafe import Markup

from underhoist.finding import Severity
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import contents, entry, facts, join, section
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.rules import Rule

INDEX = ("Rules", "rules/")
_EFFECT = {
    Severity.STOP: "Stops the build",
    Severity.LOOK: "Listed, the site is built",
}
_FENCE = re.compile(r"```(?P<info>[^\n]*)\n(?P<text>.*?)\n```", re.DOTALL)
_EXAMPLE = re.compile(r"^(Good|Bad)( \([^)\n]*\))?:$", re.MULTILINE)
_TITLE = re.compile(r'title="([^"]*)"')


def rule_sheets(site: Site) -> Iterator[Sheet]:
    """Make the index and every rule."""
    here = Here(site, INDEX[1])
    summary = "What the check refuses, each with a good and a bad example."
    entries = contents(
        entry(here.to(f"rules/{rule.code}/"), rule.title, f"{rule.code} · {_EFFECT[rule.severity]}")
        for rule in site.rules.values()
    )
    html = join((purpose(summary), entries, closing(site)))
    yield Sheet(address=INDEX[1], kind="index", title=INDEX[0], summary=summary, html=html)
    for rule in site.rules.values():
        yield _sheet(site, rule)


def _sheet(site: Site, rule: Rule) -> Sheet:
    why, *examples = _EXAMPLE.split(rule.page.partition("\n")[2])
    paragraphs = (" ".join(part.split()) for part in why.split("\n\n") if part.strip())
    html = join(
        (
            facts(Markup("<code>{}</code>").format(rule.code), _EFFECT[rule.severity]),
            section("uh-prose", "Why", *map(_paragraph, paragraphs)),
            *(_example(*each) for each in zip(*[iter(examples)] * 3, strict=True)),
            closing(site),
        )
    )
    return Sheet(
        address=f"rules/{rule.code}/",
        kind="rule",
        title=rule.title,
        summary=f"{rule.title}.",
        html=html,
        trail=(INDEX,),
    )


def _example(word: str, note: str | None, text: str) -> Markup:
    """Write the fenced blocks of an example, each with the file it belongs to."""
    blocks = join(_block(found["info"], found["text"]) for found in _FENCE.finditer(text))
    return Markup(
        '<section class="uh-example uh-example--{}">\n<h2>{}</h2>\n{}\n</section>'
    ).format(word.lower(), f"{word}{note or ''}", blocks)


def _block(info: str, text: str) -> Markup:
    title = _TITLE.search(info)
    file = Markup("<p><code>{}</code></p>\n").format(title[1]) if title else Markup("")
    return Markup('{}<pre tabindex="0"><code>{}</code></pre>').format(file, text)


def _paragraph(text: str) -> Markup:
    return Markup("<p>{}</p>").format(_with_code(text))


def _with_code(text: str) -> Markup:
    """Set what stands between backticks as code."""
    pieces = enumerate(text.split("`"))
    return join((Markup("<code>{}</code>").format(p) if n % 2 else p for n, p in pieces), "")
