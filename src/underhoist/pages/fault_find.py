"""The live part of a complaint's page, with what it shows before a phone has answered."""

from attrs import evolve
from markupsafe import Markup
from underhoist_calculators.fault_finding import door, html

from underhoist.model import Fault
from underhoist.pages.fault_orders import Order, ways
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, join, link
from underhoist.references import Target


def find_section(here: Here, fault: Fault, orders: tuple[Order, ...]) -> Markup:
    """Write where the search stands at the start, for the first family; nothing without an order.

    The phone puts the buttons in, and the family that the reader chooses.
    """
    if not orders:
        return NOTHING
    first = orders[0]
    complaint = first.plan.complaint
    how = {each.id: _how(here, first, each.id) for each in complaint.checks}
    told = door.told(first.plan, first.plan.board.start())
    standing = Markup(html.standing(told, how))  # noqa: S704 - escaped by the engine's writer
    return Markup(
        '<section class="uh-find" id="fault" data-fault="{}">\n'
        '<h2>Find the cause</h2>\n{}\n{}\n<div class="uh-find__tools"></div>\n</section>'
    ).format(fault.id, _families(here, orders), standing)


def _families(here: Here, orders: tuple[Order, ...]) -> Markup:
    """Write the choice of the unit family; only a phone that runs the page's script can use it."""
    known = here.site.manual.families
    ids = dict.fromkeys(id_ for order in orders for id_ in order.families)
    named = {id_: known[id_].title.value for id_ in ids if id_ in known}
    if len(named) < 2:
        return NOTHING
    options = join(
        (Markup('<option value="{}">{}</option>').format(*each) for each in named.items()), ""
    )
    return Markup(
        '<div class="uh-find__family uh-field"><label for="fault-family">Unit family of the '
        'vehicle</label><select id="fault-family">{}</select></div>'
    ).format(options)


def _how(here: Here, order: Order, check: str) -> str:
    """Say what the check's access asks, and lead to the procedures that tell how it is done."""
    targets = ways(here, evolve(order, families=order.families[:1]), check)
    links = join((link(here.to_target(each), each.title) for each in targets), ", ")
    told = Markup("<p>How: {}</p>").format(links) if links else NOTHING
    access = order.fault.checks[check].access.value
    return str(join((_asked(here, access, targets), told), ""))


def _asked(here: Here, access: str, shown: list[Target]) -> Markup:
    level = here.site.manual.access.get(access)
    meaning = level.meaning.value if level and level.meaning else ""
    words = f"{access}: {meaning[0].lower()}{meaning[1:]}" if meaning else access
    target = None
    if level and level.procedure:
        target = here.target("procedure", level.procedure.value)
    if target in shown:
        target = None
    way = Markup(" ({})").format(link(here.to_target(target), target.title)) if target else NOTHING
    return Markup("<p>{}{}{}.</p>").format(words[:1].upper(), words[1:], way)
