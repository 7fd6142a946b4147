"""A complaint: what is behind it, and the checks that find out, cheapest first."""

from collections.abc import Iterable

from markupsafe import Markup

from underhoist.model import Cause, Check, Fault
from underhoist.pages.authored import prose, sheet
from underhoist.pages.here import Here
from underhoist.pages.html import contents, facts, join, link, section
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
        section(
            "uh-checks",
            "Checks, in this order",
            _numbered(_check(here, fault, each) for each in fault.checks.values()),
        ),
        section("uh-causes", "What can be behind it", _causes(here, fault)),
        prose(here),
        used_section(here, "fault", fault.id),
    )


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
    ]
    notes = join((Markup("<p>{}</p>").format(line) for line in lines if line), "")
    if len(ways) == 1:
        return Markup("<li>{}{}</li>").format(link(here.to_target(ways[0]), name), notes)
    how = join((link(here.to_target(each), each.title) for each in ways), ", ")
    told = Markup("<p>How: {}</p>").format(how) if how else ""
    return Markup("<li><strong>{}</strong>{}{}</li>").format(name, notes, told)


def _causes(here: Here, fault: Fault) -> Markup:
    ordered = sorted(fault.causes.values(), key=lambda each: -each.likelihood.value)
    return contents(_cause(here, each) for each in ordered)


def _cause(here: Here, cause: Cause) -> Markup:
    """One cause: how often it is the one, and what mends it."""
    targets = (here.target("procedure", each.value) for each in cause.procedures)
    ways = join((link(here.to_target(each), each.title) for each in targets if each), ", ")
    mended = Markup("<p>Mend it: {}</p>").format(ways) if ways else ""
    share = Markup("<p>Behind about {} of 100 such complaints</p>").format(
        round(100 * cause.likelihood.value)
    )
    return Markup("<li><strong>{}</strong>{}{}</li>").format(cause.name.value, share, mended)
