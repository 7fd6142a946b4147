"""A complaint: what is behind it, and the checks that find out, in the quickest order."""

from collections.abc import Iterable, Iterator

from markupsafe import Markup

from underhoist.model import Cause, Check, Fault
from underhoist.pages.authored import prose, sheet
from underhoist.pages.fault_find import find_section
from underhoist.pages.fault_orders import Order, orders_of
from underhoist.pages.fault_table import order_table
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, contents, facts, join, link, section
from underhoist.pages.listing import families_of, minutes, used_section
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site


def fault_sheet(site: Site, fault: Fault) -> Sheet:
    """Make the page of a fault."""
    here = Here.on(site, fault)
    orders = orders_of(here, fault)
    return sheet(
        here,
        fault,
        facts(families_of(here, fault)),
        Markup('<p class="uh-complaint">{}</p>').format(f"“{fault.complaint.value}”"),
        find_section(here, fault, orders),
        _checks(here, fault, orders),
        section("uh-causes", "What can be behind it", _causes(here, fault)),
        prose(here),
        used_section(here, "fault", fault.id),
    )


def _checks(here: Here, fault: Fault, orders: tuple[Order, ...]) -> Markup:
    """Write the checks in the computed order, and as written where that is another."""
    written = _numbered(_check(here, fault, each) for each in fault.checks.values())
    if not orders:
        return section("uh-checks", "Checks, in this order", written)
    tables = section("uh-checks", "Checks, in this order", *_tables(here, orders))
    same = len(orders) == 1 and orders[0].is_as_written
    other = NOTHING if same else section("uh-written", "Checks as written", written)
    return join((tables, other))


def _tables(here: Here, orders: tuple[Order, ...]) -> Iterator[Markup]:
    """Write the table of each order, under the names of its families where there are several."""
    known = here.site.manual.families
    for order in orders:
        names = ", ".join(known[id_].title.value for id_ in order.families if id_ in known)
        table = order_table(here, order)
        yield Markup("<h3>{}</h3>\n{}").format(names, table) if len(orders) > 1 else table


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
        _only(here, check),
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
    only = Markup("<p>{}</p>").format(words) if (words := _only(here, cause)) else ""
    share = Markup("<p>Behind about {} in 100 such complaints</p>").format(
        round(100 * cause.likelihood.value)
    )
    return Markup('<li id="cause-{}"><strong>{}</strong>{}{}{}</li>').format(
        id_, cause.name.value, share, only, mended
    )


def _only(here: Here, entry: Cause | Check) -> str:
    """Say on which families only there is such a cause, or such a check is made."""
    known = here.site.manual.families
    names = [known[id_.value].title.value for id_ in entry.unit_family if id_.value in known]
    return f"Only on the {' and the '.join(names)}." if names else ""
