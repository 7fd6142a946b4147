"""A complaint: what is behind it, and the checks that find out, in the quickest order."""

from collections.abc import Iterable, Iterator

from markupsafe import Markup

from underhoist.model import Cause, Check, Fault
from underhoist.pages.authored import prose, sheet
from underhoist.pages.fault_table import order_of, order_table
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, contents, facts, join, link, section
from underhoist.pages.listing import families_of, minutes, used_section
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site


def fault_sheet(site: Site, fault: Fault) -> Sheet:
    """Make the page of a fault."""
    here = Here.on(site, fault)
    return sheet(
        here,
        fault,
        facts(families_of(here, fault)),
        Markup('<p class="uh-complaint">{}</p>').format(f"“{fault.complaint.value}”"),
        _checks(here, fault),
        section("uh-causes", "What can be behind it", _causes(here, fault)),
        prose(here),
        used_section(here, "fault", fault.id),
    )


def _checks(here: Here, fault: Fault) -> Markup:
    """Write the checks in the computed order, and as written where that is another."""
    order = order_of(here, fault)
    written = _numbered(_check(here, fault, each) for each in fault.checks.values())
    if order is None:
        return section("uh-checks", "Checks, in this order", written)
    table = section("uh-checks", "Checks, in this order", order_table(here, order))
    other = NOTHING if order.is_as_written else section("uh-written", "Checks as written", written)
    return join((table, other))


def _numbered(items: Iterable[Markup]) -> Markup:
    inner = join(items)
    return Markup('<ol class="uh-contents">\n{}\n</ol>').format(inner) if inner else Markup("")


def _check(here: Here, fault: Fault, check: Check) -> Markup:
    """One check: what it takes, what a good result rules out, and how each family does it."""
    ways = [
        each for each in (here.target("procedure", id_.value) for id_ in check.procedure) if each
    ]
    name = check.name.value
    ruled_out = [
        fault.causes[each.value].name.value
        for each in check.rules_out
        if each.value in fault.causes
    ]
    lines = [
        f"{minutes(check.minutes.value)} · {check.access.value}",
        f"A good result rules out: {'; '.join(ruled_out)}." if ruled_out else "",
        *_told(fault, check),
    ]
    notes = join((Markup("<p>{}</p>").format(line) for line in lines if line), "")
    if len(ways) == 1:
        return Markup("<li>{}{}</li>").format(link(here.to_target(ways[0]), name), notes)
    how = join((link(here.to_target(each), each.title) for each in ways), ", ")
    told = Markup("<p>How: {}</p>").format(how) if how else ""
    return Markup("<li><strong>{}</strong>{}{}</li>").format(name, notes, told)


def _told(fault: Fault, check: Check) -> Iterator[str]:
    """Say how often the check is bad with the causes that it does not always tell."""
    by_words: dict[str, list[str]] = {}
    for id_, often in check.bad_with.items():
        if id_ in fault.causes:
            by_words.setdefault(often.written, []).append(fault.causes[id_].name.value)
    for words, names in by_words.items():
        yield f"Bad {words} with: {'; '.join(names)}."


def _causes(here: Here, fault: Fault) -> Markup:
    ordered = sorted(fault.causes.items(), key=lambda item: -item[1].likelihood.value)
    return contents(_cause(here, id_, each) for id_, each in ordered)


def _cause(here: Here, id_: str, cause: Cause) -> Markup:
    """One cause: how often it is the one, and what mends it."""
    targets = (here.target("procedure", each.value) for each in cause.procedures)
    ways = join((link(here.to_target(each), each.title) for each in targets if each), ", ")
    mended = Markup("<p>Mend it: {}</p>").format(ways) if ways else ""
    share = Markup("<p>Behind about {} in 100 such complaints</p>").format(
        round(100 * cause.likelihood.value)
    )
    return Markup('<li id="cause-{}"><strong>{}</strong>{}{}</li>').format(
        id_, cause.name.value, share, mended
    )
