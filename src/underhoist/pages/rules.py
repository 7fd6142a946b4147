"""The rules' pages, made from their docstrings."""

import re
from collections.abc import Iterator

from markupsafe import Markup

from underhoist.finding import Severity
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, contents, entry, facts, join
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.rules import Rule

INDEX = ("Rules", "rules/")
_EFFECT = {
    Severity.STOP: "Stops the build",
    Severity.LOOK: "Listed, the site is built",
}
_FENCE = re.compile(r"```(?P<info>[^\n]*)\n(?P<text>.*?)\n```", re.DOTALL)
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
    why, good, bad = _parts(rule.page)
    html = join(
        (
            *(Markup("<p>{}</p>").format(paragraph) for paragraph in why),
            facts(Markup("<code>{}</code>").format(rule.code), _EFFECT[rule.severity]),
            _example("Good", good),
            _example("Bad", bad),
            closing(site),
        )
    )
    return Sheet(
        address=f"rules/{rule.code}/",
        kind="rule",
        title=rule.title,
        summary=rule.title + ".",
        html=html,
        trail=(INDEX,),
    )


def _parts(page: str) -> tuple[list[str], str, str]:
    """Paragraphs that say why, then the text below Good and below Bad."""
    _, _, rest = page.partition("\n")
    why, _, examples = rest.partition("\nGood:\n")
    good, _, bad = examples.partition("\nBad:\n")
    paragraphs = [" ".join(part.split()) for part in why.split("\n\n") if part.strip()]
    return paragraphs, good, bad


def _example(heading: str, text: str) -> Markup:
    """Write the fenced blocks of an example, each with the file it belongs to."""
    blocks = join(_block(found["info"], found["text"]) for found in _FENCE.finditer(text))
    if not blocks:
        return NOTHING
    return Markup(
        '<section class="uh-example uh-example--{}">\n<h2>{}</h2>\n{}\n</section>'
    ).format(heading.lower(), heading, blocks)


def _block(info: str, text: str) -> Markup:
    title = _TITLE.search(info)
    file = Markup("<p><code>{}</code></p>\n").format(title[1]) if title else NOTHING
    return Markup('{}<pre tabindex="0"><code>{}</code></pre>').format(file, text)
