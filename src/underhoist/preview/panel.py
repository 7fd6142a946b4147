"""Findings as a preview shows them: a panel in their page, a line on every page, a list of all."""

from collections.abc import Iterable

from markupsafe import Markup

from underhoist.checker import Checked
from underhoist.finding import Finding, Severity
from underhoist.links import page_address
from underhoist.pages.html import join
from underhoist.source import is_page

LIST = "_preview/findings/"
"""Where the list of all findings stands; no page of a manual can."""


def panel(findings: Iterable[Finding], said: str = "") -> Markup:
    """Write the findings of one page, and what is said of how it is shown; nothing for neither."""
    items = list(findings)
    if not items and not said:
        return Markup()
    heading = _count(len(items), "finding") + " on this page"
    words = Markup("<p>{}</p>").format(said) if said else ""
    return Markup(
        '<section class="uh-found" aria-labelledby="uh-found">\n'
        '<h2 id="uh-found">{}</h2>\n{}</section>'
    ).format(heading, join((words, listed(items))))


def line(checked: Checked, notice: str = "") -> Markup:
    """Write the line that stands on every page: how many findings the manual has."""
    if notice:
        return _line(Markup("<strong>{}</strong>").format(notice))
    if not checked.findings:
        return _line(Markup("Nothing found in {}.").format(_count(checked.pages, "page")))
    total = _count(len(checked.findings), "finding") + " in the manual"
    stops = checked.stops
    words = f"{stops} {'stops' if stops == 1 else 'stop'} the build" if stops else "to look at"
    return _line(Markup('<a href="/{}">{}</a>: {}.').format(LIST, total, words))


def everything(checked: Checked) -> Markup:
    """Write the list of all findings, file by file."""
    files = dict.fromkeys(finding.at.file for finding in checked.findings)
    return join(
        Markup('<section class="uh-found">\n<h2>{}</h2>\n{}</section>').format(
            _file(file), listed(each for each in checked.findings if each.at.file == file)
        )
        for file in files
    ) or Markup("<p>{}</p>").format(f"Nothing found in {_count(checked.pages, 'page')}.")


def listed(findings: Iterable[Finding]) -> Markup:
    """Write the findings one below the other: where, what was written, what is wrong, the mend."""
    items = join(map(_item, findings))
    return Markup("<ol>\n{}\n</ol>\n").format(items) if items else Markup()


def _item(finding: Finding) -> Markup:
    stops = finding.severity is Severity.STOP
    rows = (
        ("Written", finding.written or "(nothing)"),
        ("Wrong", finding.wrong),
        ("Mend", finding.mend),
    )
    facts = join((Markup("<dt>{}</dt><dd>{}</dd>").format(*row) for row in rows), "")
    return Markup(
        '<li><h3>Line {}</h3><p class="uh-found__rule">{} '
        '<a href="/rules/{}/">{}</a></p><dl>{}</dl></li>'
    ).format(
        finding.at.line,
        "Stops the build:" if stops else "To look at:",
        finding.code,
        finding.code,
        facts,
    )


def _line(words: Markup) -> Markup:
    return Markup('<p class="uh-found-line" role="status">{}</p>').format(words)


def _file(file: str) -> Markup:
    if not is_page(file):
        return Markup("{}").format(file)
    return Markup('<a href="/{}">{}</a>').format(page_address(file), file)


def _count(number: int, thing: str) -> str:
    return f"{number:,} {thing}" if number == 1 else f"{number:,} {thing}s"
